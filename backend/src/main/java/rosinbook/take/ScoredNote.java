package rosinbook.take;

/**
 * What counts of a note when it is scored.
 *
 * @param onSeconds start
 * @param offSeconds end
 * @param pitch semitones as MIDI numbers them, with fractions
 */
public record ScoredNote(double onSeconds, double offSeconds, double pitch) {
    /** @throws IllegalArgumentException if a figure is not a number or the note ends before it starts */
    public ScoredNote {
        if (!Double.isFinite(onSeconds) || !Double.isFinite(pitch) || !(offSeconds >= onSeconds)) {
            throw new IllegalArgumentException("a note from " + onSeconds + " to " + offSeconds + " s, pitch " + pitch);
        }
    }

    static ScoredNote of(TakeNote note) {
        return new ScoredNote(note.onSeconds(), note.offSeconds(), note.pitch());
    }
}
