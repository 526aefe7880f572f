package rosinbook.take;

/**
 * A pitch bend: from this moment on the channel sounds this much off.
 *
 * @param channel 1 to 16
 * @param tick when, ticks
 * @param cents how far, above 0 = up
 */
public record Bend(int channel, long tick, double cents) {
    /** @throws IllegalArgumentException if the channel or tick is out of range, or the cents no number */
    public Bend {
        if (channel < 1 || channel > 16 || tick < 0 || !Double.isFinite(cents)) {
            throw new IllegalArgumentException("bend on channel " + channel + " at tick " + tick + ": out of range");
        }
    }
}
