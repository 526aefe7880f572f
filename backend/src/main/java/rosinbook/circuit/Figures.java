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

    /** A voltage with its unit and a true minus sign: 1.04 V, −7 V. */
    static String volts(double volts) {
        return signed(volts) + " V";
    }

    /** A number with a true minus sign. */
    static String signed(double number) {
        return plain(number).replace('-', '\u2212');
    }

    /** Rounded to four significant digits, as sentences show computed figures. */
    static double rounded(double number) {
        return Double.isFinite(number)
                ? new BigDecimal(number)
                        .round(new MathContext(4, RoundingMode.HALF_EVEN))
                        .doubleValue()
                : number;
    }
}
