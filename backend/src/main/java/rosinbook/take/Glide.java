package rosinbook.take;

/**
 * A slide at the end of a note, towards the note that follows on its string.
 *
 * @param fromTick where the pitch leaves the note, ticks
 * @param toTick where it arrives, ticks, after {@code fromTick}
 * @param semitones how far, below 0 = down
 */
public record Glide(long fromTick, long toTick, int semitones) {
    /** @throws IllegalArgumentException if it takes no time or goes nowhere */
    public Glide {
        if (fromTick < 0 || toTick <= fromTick || semitones == 0) {
            throw new IllegalArgumentException(
                    "a glide of " + semitones + " semitones from tick " + fromTick + " to " + toTick);
        }
    }
}
