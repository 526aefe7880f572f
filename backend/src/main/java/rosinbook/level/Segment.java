package rosinbook.level;

import com.fasterxml.jackson.annotation.JsonProperty;

/**
 * A stretch of a recording in which one string is bowed.
 *
 * @param string 1 = highest
 * @param fromSeconds where it starts, 0 or more
 * @param toSeconds where it ends, after its start
 * @param loudness how loud it was meant to be
 */
public record Segment(
        int string, @JsonProperty("from") double fromSeconds, @JsonProperty("to") double toSeconds, Loudness loudness) {
    /** @throws IllegalArgumentException naming what is missing or out of order */
    public Segment {
        if (string < 1) {
            throw new IllegalArgumentException(
                    "a segment names string " + string + "; strings count from 1, the highest");
        }
        if (!(fromSeconds >= 0 && toSeconds > fromSeconds && toSeconds < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a segment of string " + string + " goes from " + fromSeconds + " to "
                    + toSeconds + " s; it must start at 0 or later and end after its start");
        }
        if (loudness == null) {
            throw new IllegalArgumentException(
                    "a segment of string " + string + " has no loudness; give soft, medium or loud");
        }
    }
}
