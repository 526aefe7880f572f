package rosinbook.example;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalTime;
import java.util.Set;
import java.util.stream.Stream;
import rosinbook.notebook.Kind;

/**
 * One save of the season; exactly one of content, change and played is given.
 *
 * @param day counted from the day the example is written for, below 0
 * @param time of day, UTC
 * @param by who saves
 * @param key names the sheet within the season
 * @param reason why; may be empty
 * @param content of a new sheet, or null
 * @param change to the newest content, as a JSON Merge Patch (RFC 7396), or null
 * @param played whether a set is marked as played
 * @param file the name of a file that the content names by its SHA-256, in the folder {@code takes}; or null
 * @param stayPinned keys of recipes that do not follow a changed starting point on
 */
record Step(
        int day,
        LocalTime time,
        String by,
        Kind kind,
        String key,
        String reason,
        ObjectNode content,
        ObjectNode change,
        boolean played,
        String file,
        Set<String> stayPinned) {
    Step {
        long given = Stream.of(content != null, change != null, played)
                .filter(Boolean::booleanValue)
                .count();
        if (given != 1) {
            throw new IllegalArgumentException(
                    "the step for " + key + " on day " + day + " needs one of content, change and played");
        }
        stayPinned = stayPinned == null ? Set.of() : Set.copyOf(stayPinned);
    }
}
