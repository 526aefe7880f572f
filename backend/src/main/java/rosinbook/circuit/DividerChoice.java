package rosinbook.circuit;

import java.util.List;

/**
 * One pair of resistors for a goal, with everything a player wants to know before buying them.
 *
 * @param upperOhms from the rail to the output, Ω
 * @param lowerOhms from the output to ground, Ω
 * @param volts output under load with nominal values, V
 * @param errorVolts {@code volts} less the target, V
 * @param minVolts lowest output over the tolerances of both resistors and the rail, V
 * @param maxVolts highest output over them, V
 * @param theveninOhms what the load sees, Ω: both resistors in parallel
 * @param milliamps what the rail gives, load included, mA, never negative
 * @param upperMilliwatts heat in the upper resistor, mW
 * @param lowerMilliwatts heat in the lower resistor, mW
 * @param upperRatingShare heat in the upper resistor as a share of its rating, 0 to 1
 * @param lowerRatingShare heat in the lower resistor as a share of its rating, 0 to 1
 * @param upperBands coloured rings of the upper resistor, see {@link ColourBands}
 * @param lowerBands coloured rings of the lower resistor
 * @see "Kuphaldt, Lessons in Electric Circuits I, ch. 6 (dividers) and ch. 10 (Thevenin)"
 */
public record DividerChoice(
        double upperOhms,
        double lowerOhms,
        double volts,
        double errorVolts,
        double minVolts,
        double maxVolts,
        double theveninOhms,
        double milliamps,
        double upperMilliwatts,
        double lowerMilliwatts,
        double upperRatingShare,
        double lowerRatingShare,
        List<String> upperBands,
        List<String> lowerBands) {
    /** Copies the lists. */
    public DividerChoice {
        upperBands = List.copyOf(upperBands);
        lowerBands = List.copyOf(lowerBands);
    }

    /**
     * Works out one pair for a goal, whether or not it keeps the goal's limits.
     *
     * @param upperOhms Ω, 0.1 to 99.9e9
     * @param lowerOhms Ω, 0.1 to 99.9e9
     */
    public static DividerChoice of(DividerGoal goal, double upperOhms, double lowerOhms) {
        double volts = volts(goal, goal.supplyVolts(), upperOhms, lowerOhms);
        double drop = goal.supplyVolts() - volts;
        double part = goal.tolerancePercent() / 100;
        double rail = goal.supplyTolerancePercent() / 100;
        double weak = volts(goal, goal.supplyVolts() * (1 - rail), upperOhms * (1 + part), lowerOhms * (1 - part));
        double strong = volts(goal, goal.supplyVolts() * (1 + rail), upperOhms * (1 - part), lowerOhms * (1 + part));
        double upperMilliwatts = 1000 * drop * drop / upperOhms;
        double lowerMilliwatts = 1000 * volts * volts / lowerOhms;
        return new DividerChoice(
                upperOhms,
                lowerOhms,
                volts,
                volts - goal.targetVolts(),
                Math.min(weak, strong),
                Math.max(weak, strong),
                upperOhms * lowerOhms / (upperOhms + lowerOhms),
                1000 * Math.abs(drop) / upperOhms,
                upperMilliwatts,
                lowerMilliwatts,
                upperMilliwatts / goal.ratingMilliwatts(),
                lowerMilliwatts / goal.ratingMilliwatts(),
                ColourBands.of(upperOhms, goal.tolerancePercent()),
                ColourBands.of(lowerOhms, goal.tolerancePercent()));
    }

    private static double volts(DividerGoal goal, double supplyVolts, double upperOhms, double lowerOhms) {
        double loaded = goal.loaded(lowerOhms);
        return supplyVolts * loaded / (upperOhms + loaded);
    }
}
