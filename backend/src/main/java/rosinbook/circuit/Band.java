package rosinbook.circuit;

/**
 * A stretch of a control line's voltage that means one thing.
 *
 * @param fromVolts inclusive, V
 * @param toVolts exclusive, V, above {@code fromVolts}
 * @param meaning what the synth does, 1 to 80 characters
 */
public record Band(double fromVolts, double toVolts, String meaning) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public Band {
        Require.within("fromVolts", fromVolts, -60, 60, "volts");
        Require.within("toVolts", toVolts, -60, 60, "volts");
        if (fromVolts >= toVolts) {
            throw new IllegalArgumentException("toVolts is " + Figures.plain(toVolts)
                    + "; give volts above fromVolts, which is " + Figures.plain(fromVolts));
        }
        meaning = Require.line("meaning", meaning, 1, 80);
    }

    /** Whether a steady voltage has this meaning. */
    public boolean contains(double volts) {
        return volts >= fromVolts && volts < toVolts;
    }
}
