package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/**
 * Something to play.
 *
 * @param composer a name or "traditional"; may be empty
 * @param styles free tags, lower case, up to 20 of up to 60 characters
 * @param tempoBpm quarter notes a minute, 10 to 400; absent if free
 * @param meter such as {@code 6/8}; may be empty
 * @param key such as {@code D mixolydian}; may be empty
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Piece(
        String title, String composer, Set<String> styles, Double tempoBpm, String meter, String key, String notes)
        implements Content {
    public Piece {
        title = Require.title("title", title);
        composer = Require.limited("composer", composer == null ? "" : composer, Require.TITLE_LENGTH);
        styles = tidied(styles == null ? Set.of() : styles);
        if (tempoBpm != null) {
            Require.within("tempoBpm", tempoBpm, 10, 400, "quarter notes a minute");
        }
        meter = Require.limited("meter", meter == null ? "" : meter, 20);
        key = Require.limited("key", key == null ? "" : key, 40);
        notes = Require.text("notes", notes);
    }

    private static Set<String> tidied(Set<String> given) {
        Set<String> tidy = new TreeSet<>();
        for (String style : given) {
            // A letter can become two in lower case, so what is kept is what is counted.
            String lower = Require.title("styles", style).toLowerCase(java.util.Locale.ROOT);
            tidy.add(Require.limited("styles", lower, 60));
        }
        if (tidy.size() > 20) {
            throw new PastLimit(Limit.ENTRIES, "styles has " + tidy.size() + " entries; 20 is the most");
        }
        return Collections.unmodifiableSet(tidy);
    }

    @Override
    public Stream<String> searchWords() {
        return Stream.concat(Stream.of(composer, key, notes), styles.stream());
    }
}
