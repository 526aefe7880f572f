package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * What a divider is asked to do. What is left out gets the usual value.
 *
 * @param supplyVolts the rail, V against ground, -1000 to 1000, not 0
 * @param targetVolts what the output should give with its load, V, -1000 to 1000
 * @param loadOhms resistance of the load to ground, Ω; absent for none
 * @param series from which both resistors are chosen; E24
 * @param tolerancePercent of each resistor, 0 to 20 %; 1 %
 * @param supplyTolerancePercent of the rail, 0 to 50 %; 0 %
 * @param maxMilliamps what the rail may be asked for, load included, 1e-6 to 10 000 mA; 1 mA
 * @param ratingMilliwatts of each resistor, 1 to 100 000 mW; 250 mW
 * @param maxRatingShare how much of its rating a resistor may use, above 0 to 1; 1
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record DividerGoal(
        double supplyVolts,
        double targetVolts,
        Double loadOhms,
        Series series,
        Double tolerancePercent,
        Double supplyTolerancePercent,
        Double maxMilliamps,
        Double ratingMilliwatts,
        Double maxRatingShare) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public DividerGoal {
        Require.within("supplyVolts", supplyVolts, -1000, 1000, "volts");
        if (supplyVolts == 0) {
            throw new IllegalArgumentException("supplyVolts is 0; give the voltage of the supply rail");
        }
        Require.within("targetVolts", targetVolts, -1000, 1000, "volts");
        if (loadOhms != null) {
            Require.ohms("loadOhms", loadOhms);
        }
        series = series == null ? Series.E24 : series;
        tolerancePercent = tolerancePercent == null ? 1.0 : tolerancePercent;
        supplyTolerancePercent = supplyTolerancePercent == null ? 0.0 : supplyTolerancePercent;
        maxMilliamps = maxMilliamps == null ? 1.0 : maxMilliamps;
        ratingMilliwatts = ratingMilliwatts == null ? 250.0 : ratingMilliwatts;
        maxRatingShare = maxRatingShare == null ? 1.0 : maxRatingShare;
        Require.within("tolerancePercent", tolerancePercent, 0, 20, "percent");
        Require.within("supplyTolerancePercent", supplyTolerancePercent, 0, 50, "percent");
        Require.within("maxMilliamps", maxMilliamps, 1e-6, 10_000, "milliamps");
        Require.within("ratingMilliwatts", ratingMilliwatts, 1, 100_000, "milliwatts");
        Require.within("maxRatingShare", maxRatingShare, 0.001, 1, "a share");
    }

    /** A goal with every usual value. */
    public static DividerGoal of(double supplyVolts, double targetVolts) {
        return new DividerGoal(supplyVolts, targetVolts, null, null, null, null, null, null, null);
    }

    /** The heat one resistor may make, mW. */
    double allowedMilliwatts() {
        return ratingMilliwatts * maxRatingShare;
    }

    /** A resistance to ground with the load across it, Ω. */
    double loaded(double lowerOhms) {
        return loadOhms == null ? lowerOhms : lowerOhms * loadOhms / (lowerOhms + loadOhms);
    }
}
