package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rosinbook.pitch.Note;
import rosinbook.take.StringLayout;
import rosinbook.take.TakeReader;
import rosinbook.take.Threshold;
import rosinbook.take.Thresholds;
import rosinbook.take.Tuning;

/**
 * A recording of playing, and what the player decided about its faults. The recording itself is never altered.
 *
 * @param date the day it was played; absent if not noted
 * @param rig what it was played on, held at an exact revision; absent if not noted
 * @param midi the file as it came
 * @param strings open notes by string number from 1; empty to go by the notes
 * @param layout how the file tells the strings apart; absent to go by the notes
 * @param exercise the script it was played to; absent for free playing
 * @param thresholds figures moved from where they usually stand, by name
 * @param refused faults whose repair the player did not want, by their id, with a word why; it may be empty
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TakeSheet(
        String title,
        LocalDate date,
        Reference rig,
        Blob midi,
        Map<String, Note> strings,
        Layout layout,
        Exercise exercise,
        Map<String, Double> thresholds,
        Map<String, String> refused,
        String notes)
        implements Content {
    public TakeSheet {
        title = Require.title("title", title);
        if (date != null) {
            Require.day("date", date);
        }
        Require.present("midi", midi);
        strings = Require.keyed("strings", strings, 16);
        for (int number = 1; number <= strings.size(); number++) {
            if (!strings.containsKey(Integer.toString(number))) {
                throw new IllegalArgumentException(
                        "strings has no \"" + number + "\"; number them 1 (highest) to " + strings.size());
            }
        }
        thresholds = Require.keyed("thresholds", thresholds, Threshold.values().length);
        moved(thresholds);
        refused = Require.keyed("refused", refused, 5000);
        refused.values().forEach(why -> Require.limited("refused", why, 200));
        notes = Require.text("notes", notes);
    }

    @Override
    public Map<String, Link> links() {
        return rig == null ? Map.of() : Map.of("/rig", Link.of(Relation.RIG, Kind.RIGS, rig));
    }

    @Override
    public Set<Blob> blobs() {
        return Set.of(midi);
    }

    @Override
    public Stream<String> searchWords() {
        return Stream.of(notes);
    }

    @Override
    public Optional<LocalDate> day() {
        return Optional.ofNullable(date);
    }

    /** The same take with its rig held at an exact revision. */
    TakeSheet pinned(Reference exactRig) {
        return new TakeSheet(title, date, exactRig, midi, strings, layout, exercise, thresholds, refused, notes);
    }

    /** Reads the file as the player said it is to be read; what was not said is guessed. */
    public TakeReader reader() {
        Optional<Tuning> tuning = strings.isEmpty()
                ? Optional.empty()
                : Optional.of(new Tuning(IntStream.rangeClosed(1, strings.size())
                        .mapToObj(number -> strings.get(Integer.toString(number)))
                        .toList()));
        Optional<Layout> known = Optional.ofNullable(layout);
        return new TakeReader(
                tuning,
                known.map(Layout::baseChannel).map(OptionalInt::of).orElse(OptionalInt.empty()),
                known.map(Layout::by),
                known.map(Layout::highestFirst));
    }

    /** The figures to look for faults by. */
    public Thresholds figures() {
        return moved(thresholds);
    }

    /**
     * The standard figures with some moved.
     *
     * @throws IllegalArgumentException if there is no such threshold, or it cannot be moved that far
     */
    public static Thresholds moved(Map<String, Double> figures) {
        Map<Threshold, Double> moved = new EnumMap<>(Threshold.class);
        figures.forEach((name, figure) -> moved.put(threshold(name), figure));
        return Thresholds.of(moved);
    }

    private static Threshold threshold(String name) {
        try {
            return Threshold.valueOf(name);
        } catch (IllegalArgumentException unknown) {
            throw new IllegalArgumentException(
                    "thresholds/" + name + " is no threshold; /api/bench/takes/thresholds lists them");
        }
    }

    /**
     * How a file tells strings apart; whatever is absent is guessed.
     *
     * @param by what a string is recognised by
     * @param baseChannel the lowest channel, 1 to 16
     * @param highestFirst whether the first channel or track is the highest string
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Layout(StringLayout.By by, Integer baseChannel, Boolean highestFirst) {
        public Layout {
            if (baseChannel != null) {
                Require.within("baseChannel", baseChannel.doubleValue(), 1, 16, "");
            }
        }
    }

    /**
     * The exercise for the take's strings.
     *
     * @param tempoBpm how fast it was played
     */
    public record Exercise(Double tempoBpm) {
        public Exercise {
            tempoBpm = Require.within("tempoBpm", tempoBpm, 30, 180, "bpm");
        }
    }
}
