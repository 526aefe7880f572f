package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What happened, when, about which things.
 *
 * @param event what kind of occasion
 * @param felt how it felt; absent if not said
 * @param about the sheets it speaks of, by a key of the player's program
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record LogEntry(LocalDate date, Event event, Felt felt, String text, Map<String, About> about)
        implements Content {
    /** Occasions. */
    public enum Event {
        @JsonProperty("rehearsal")
        REHEARSAL("Rehearsal"),
        @JsonProperty("concert")
        CONCERT("Concert"),
        @JsonProperty("practice")
        PRACTICE("Practice"),
        @JsonProperty("bench")
        BENCH("At the bench"),
        @JsonProperty("repair")
        REPAIR("Repair");

        private final String words;

        Event(String words) {
            this.words = words;
        }
    }

    /** How it felt, worst first. */
    public enum Felt {
        @JsonProperty("rough")
        ROUGH,
        @JsonProperty("uneasy")
        UNEASY,
        @JsonProperty("fair")
        FAIR,
        @JsonProperty("good")
        GOOD,
        @JsonProperty("singing")
        SINGING
    }

    public LogEntry {
        Require.day("date", date);
        event = event == null ? Event.REHEARSAL : event;
        text = Require.text("text", text);
        about = Require.keyed("about", about, 50);
    }

    /** The occasion and the first words, for lists. */
    @JsonIgnore
    @Override
    public String title() {
        String line = text.strip().lines().findFirst().orElse("");
        return event.words + (line.isEmpty() ? "" : ": " + Words.shortened(line, 80));
    }

    @Override
    public Map<String, Link> links() {
        Map<String, Link> links = new LinkedHashMap<>();
        about.forEach(
                (key, about) -> links.put("/about/" + key, Link.of(Relation.ABOUT, about.kind(), about.reference())));
        return links;
    }

    @Override
    public Stream<String> searchWords() {
        return Stream.of(text);
    }

    @Override
    public Optional<LocalDate> day() {
        return Optional.of(date);
    }

    /** A sheet that is spoken of. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record About(Kind kind, Reference reference) {
        public About {
            Require.present("kind", kind);
            Require.present("reference", reference);
        }
    }
}
