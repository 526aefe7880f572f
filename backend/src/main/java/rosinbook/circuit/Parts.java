package rosinbook.circuit;

/**
 * The resistors an adapter is built from.
 *
 * @param series from which values are chosen; E24 if left out
 * @param tolerancePercent of each resistor, above 0 to 20 %; 1 % if left out
 * @param ratingMilliwatts what each resistor may turn into heat at room temperature, 10 to 10 000 mW; 250 mW if left out
 */
public record Parts(Series series, Double tolerancePercent, Double ratingMilliwatts) {
    /** Quarter-watt metal film resistors, 1 %, values of E24 (common practice, no source). */
    public static final Parts USUAL = new Parts(Series.E24, 1.0, 250.0);

    /** @throws IllegalArgumentException starting with the field that is wrong */
    public Parts {
        series = series == null ? Series.E24 : series;
        tolerancePercent = tolerancePercent == null ? 1.0 : tolerancePercent;
        ratingMilliwatts = ratingMilliwatts == null ? 250.0 : ratingMilliwatts;
        Require.within("tolerancePercent", tolerancePercent, 0.01, 20, "percent");
        Require.within("ratingMilliwatts", ratingMilliwatts, 10, 10_000, "milliwatts");
    }
}
