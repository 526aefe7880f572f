package rosinbook.take;

import java.util.List;
import java.util.stream.Collectors;

/**
 * A take, its faults, and what remains when they are mended. The take itself is untouched.
 *
 * @param take as it came
 * @param notes what was played, in order
 * @param faults in order of time
 * @param thresholds the figures the findings rest on
 */
public record Cleaning(Take take, List<CleanNote> notes, List<Fault> faults, Thresholds thresholds) {
    /** Copies the lists. */
    public Cleaning {
        notes = List.copyOf(notes);
        faults = List.copyOf(faults);
    }

    /** The cleaned notes as a take of their own, with the same strings and tempo; glides and bends are left behind. */
    public Take cleaned() {
        return take.withNotes(notes.stream().map(CleanNote::note).collect(Collectors.toList()));
    }
}
