package rosinbook.circuit;

import java.util.Optional;

/**
 * Says why a goal is out of reach for two resistors of whatever values between the smallest and the largest of the
 * series.
 *
 * <p>With the target held, a divider has one freedom left, its current: the upper resistor is (supply - target) / I, the
 * lower one target / (I - target / load). Each limit bounds that current from below or above; the goal is impossible
 * when the highest lower bound passes the lowest upper bound.
 */
final class DividerLimits {
    private DividerLimits() {}

    static Optional<String> reasonAgainst(DividerGoal goal) {
        double supply = Math.abs(goal.supplyVolts());
        double target = goal.targetVolts() * Math.signum(goal.supplyVolts());
        if (target == 0) {
            return Optional.of("targetVolts is 0, which needs no divider: join the line to ground with a wire");
        }
        if (target < 0) {
            return Optional.of("targetVolts is " + Figures.plain(goal.targetVolts()) + " but the supply is "
                    + Figures.plain(goal.supplyVolts())
                    + " V; a divider stays between 0 and its supply, so feed it from a rail of the other sign");
        }
        if (target >= supply) {
            return Optional.of("targetVolts is " + Figures.plain(goal.targetVolts()) + ", not below the supply of "
                    + Figures.plain(goal.supplyVolts())
                    + " V; a divider only takes away, so choose a higher rail or a target below it");
        }
        return reasonAgainstCurrent(goal, supply, target);
    }

    private static Optional<String> reasonAgainstCurrent(DividerGoal goal, double supply, double target) {
        double[] ohms = goal.series().ohms();
        double smallest = ohms[0];
        double largest = ohms[ohms.length - 1];
        double loadMilliamps = goal.loadOhms() == null ? 0 : 1000 * target / goal.loadOhms();
        double drop = supply - target;
        double atLeast = Math.max(loadMilliamps + 1000 * target / largest, 1000 * drop / largest);
        if (atLeast > goal.maxMilliamps()) {
            return Optional.of("maxMilliamps is " + Figures.plain(goal.maxMilliamps()) + ", but "
                    + Figures.volts(target)
                    + " from " + Figures.volts(supply) + " takes at least " + Figures.plain(atLeast) + " mA"
                    + (loadMilliamps > 0 ? ", of which the load takes " + Figures.plain(loadMilliamps) + " mA" : "")
                    + "; allow more current" + (loadMilliamps > 0 ? " or buffer the load" : ""));
        }
        double upperHeat = goal.allowedMilliwatts() / drop;
        double lowerHeat = loadMilliamps + goal.allowedMilliwatts() / target;
        if (atLeast > Math.min(upperHeat, lowerHeat)) {
            return Optional.of("ratingMilliwatts allows " + Figures.plain(goal.allowedMilliwatts())
                    + " mW in a resistor, but the load's " + Figures.plain(loadMilliamps) + " mA make "
                    + Figures.plain(atLeast * drop) + " mW in the upper one; take resistors of a higher rating");
        }
        double atMost = Math.min(1000 * drop / smallest, loadMilliamps + 1000 * target / smallest);
        if (atLeast > atMost) {
            return Optional.of("targetVolts is " + Figures.plain(goal.targetVolts()) + ", too close to "
                    + (target > drop ? "the supply" : "0") + " for resistors from " + Figures.ohms(smallest) + " to "
                    + Figures.ohms(largest)
                    + (target > drop ? "; a wire to the rail may do" : "; a wire to ground may do"));
        }
        return Optional.empty();
    }
}
