package rosinbook.circuit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as a player reads them. */
final class Figures {
    private Figures() {}

    /** At most six significant digits, no trailing zeros, no exponent for ordinary sizes: 4700, -4.7, 0.25. */
    static String plain(double number) {
        if (!Double.isFinite(number)) {
            return String.valueOf(number);
        }
        BigDecimal rounded = new BigDecimal(number)
                .round(new MathContext(6, RoundingMode.HALF_EVEN))
                .stripTrailingZeros();
        boolean ordinary = rounded.signum() == 0 || Math.abs(rounded.precision() - rounded.scale()) <= 12;
        return ordinary ? rounded.toPlainString() : rounded.toString();
    }

    /** A resistance with its unit: 470 Ω, 4.7 kΩ, 1 MΩ. */
    static String ohms(double ohms) {
        if (ohms >= 1e6) {
            return plain(ohms / 1e6) + " MΩ";
        }
        return ohms >= 1e3 ? plain(ohms / 1e3) + " kΩ" : plain(ohms) + " Ω";
    }
}
