package rosinbook.circuit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The coloured rings of a resistor, read from the end they crowd towards.
 *
 * <p>Two digits, multiplier and tolerance for two-digit values of 5 % and wider; three digits otherwise, as precision
 * resistors carry them. A tolerance that has no colour leaves its ring out, as 20 % always does.
 *
 * @see "IEC 60062, Marking codes for resistors and capacitors, colour code"
 */
public final class ColourBands {
    private static final List<String> DIGITS =
            List.of("black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white");
    private static final Map<Double, String> TOLERANCES = Map.of(
            10.0, "silver", 5.0, "gold", 2.0, "red", 1.0, "brown", 0.5, "green", 0.25, "blue", 0.1, "violet", 0.05,
            "orange", 0.02, "yellow");

    private ColourBands() {}

    /**
     * The rings in order.
     *
     * @param ohms Ω, 0.1 to 99.9e9; rounded to three digits
     * @param tolerancePercent %, above 0
     * @return three to five colours in lower case
     * @throws IllegalArgumentException starting with {@code ohms} when no multiplier ring can say it
     */
    public static List<String> of(double ohms, double tolerancePercent) {
        Require.within("ohms", ohms, 0.1, 99.9e9, "ohms");
        BigDecimal rounded = new BigDecimal(ohms)
                .round(new MathContext(3, RoundingMode.HALF_UP))
                .stripTrailingZeros();
        int digits = tolerancePercent >= 5 && rounded.precision() <= 2 ? 2 : 3;
        int powerOfTen = rounded.precision() - rounded.scale() - digits;
        String number = rounded.movePointLeft(powerOfTen).toBigInteger().toString();
        List<String> bands = new ArrayList<>();
        number.chars().forEach(digit -> bands.add(DIGITS.get(digit - '0')));
        bands.add(multiplier(powerOfTen));
        String tolerance = TOLERANCES.get(tolerancePercent);
        if (tolerance != null) {
            bands.add(tolerance);
        }
        return List.copyOf(bands);
    }

    private static String multiplier(int powerOfTen) {
        return switch (powerOfTen) {
            case -1 -> "gold";
            case -2 -> "silver";
            case -3 -> "pink";
            default -> DIGITS.get(powerOfTen);
        };
    }
}
