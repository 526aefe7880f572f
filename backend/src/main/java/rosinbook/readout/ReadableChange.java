package rosinbook.readout;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;

/**
 * One change as a player would write it.
 *
 * @param pointer where in the newer content (or the older, if it was left out), as a JSON Pointer
 * @param where the same in words, from the outside in
 * @param was the older value, without unit; absent if added
 * @param now the newer value, without unit; absent if left out
 * @param difference signed, between two numbers; else absent
 * @param unit may be empty
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ReadableChange(
        String pointer, List<String> where, Sort change, String was, String now, String difference, String unit) {
    /** What happened to it. */
    public enum Sort {
        @JsonProperty("added")
        ADDED,
        @JsonProperty("removed")
        REMOVED,
        @JsonProperty("changed")
        CHANGED,
        @JsonProperty("moved")
        MOVED
    }

    public ReadableChange {
        where = List.copyOf(where);
    }

    /** {@code String 1, sensitivity: 20 → 22 (+2)}. */
    public String sentence() {
        String place = String.join(", ", where);
        String measure = unit.isEmpty() ? "" : " " + unit;
        return switch (change) {
            case ADDED -> place + ": new" + (now.isEmpty() ? "" : ", " + now + measure);
            case REMOVED -> place + ": left out" + (was.isEmpty() ? "" : ", was " + was + measure);
            case MOVED -> place + ": moved from " + was + " to " + now;
            case CHANGED ->
                place + ": " + shown(was) + " → " + shown(now) + measure
                        + (difference == null ? "" : " (" + difference + ")");
        };
    }

    private static String shown(String text) {
        return text.isEmpty() ? "nothing" : text;
    }
}
