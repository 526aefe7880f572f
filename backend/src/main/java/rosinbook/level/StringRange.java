package rosinbook.level;

import java.util.ArrayList;
import java.util.List;
import rosinbook.pitch.Note;

/**
 * What one string can play, and how soon its pitch can be known at all.
 *
 * @param string 1 = highest
 * @param open the open note
 * @param openHertz its frequency
 * @param highest the highest usable note
 * @param highestHertz its frequency
 * @param openDelayMillis two periods of the open note: no pitch detector can be surer sooner
 * @param highestDelayMillis the same for the highest note
 * @param remark null, or a word on a string that is slow by nature
 * @see "Fonseca and Tavares, RITA 27(4), 2020: converters are usually restricted to at least two fundamental periods"
 */
public record StringRange(
        int string,
        Note open,
        double openHertz,
        Note highest,
        double highestHertz,
        double openDelayMillis,
        double highestDelayMillis,
        String remark) {
    /** Two octaves above the open note, where nothing better is known (common practice, no source). */
    public static final int USUAL_RANGE_SEMITONES = 24;

    /** Players accept up to 10 ms without noticing (Wessel and Wright, Computer Music Journal 26(3), 2002). */
    private static final double UNNOTICED_MILLIS = 10;

    /**
     * @param referenceHertz what A4 is tuned to
     * @throws IllegalArgumentException if the highest note lies below the open one
     */
    public static StringRange of(int string, Note open, Note highest, double referenceHertz) {
        if (highest.midi() < open.midi()) {
            throw new IllegalArgumentException(
                    "the highest note of string " + string + ", " + highest + ", lies below its open note " + open);
        }
        double openHertz = open.hertz(referenceHertz);
        double highestHertz = highest.hertz(referenceHertz);
        double delay = 2000 / openHertz;
        String remark = delay <= UNNOTICED_MILLIS
                ? null
                : Words.say(
                        "The open %s needs %.1f ms (two periods) before any detector can know it; that is physics, not a wrong setting.",
                        open, delay);
        return new StringRange(string, open, openHertz, highest, highestHertz, delay, 2000 / highestHertz, remark);
    }

    /** All strings of an instrument, highest first, each with the usual range. */
    public static List<StringRange> ofAll(List<Note> openNotes, double referenceHertz) {
        List<StringRange> ranges = new ArrayList<>();
        for (Note open : openNotes) {
            Note highest = new Note(Math.min(127, open.midi() + USUAL_RANGE_SEMITONES));
            ranges.add(of(ranges.size() + 1, open, highest, referenceHertz));
        }
        return List.copyOf(ranges);
    }
}
