package rosinbook.notebook;

import java.math.BigDecimal;
import java.math.MathContext;

/** How values are written out. */
public final class Words {
    private Words() {}

    /** A number without exponent or trailing zeros, at most six significant digits: {@code 20}, {@code −1.5}. */
    public static String number(double amount) {
        if (amount == 0) {
            return "0";
        }
        String digits = BigDecimal.valueOf(Math.abs(amount))
                .round(new MathContext(6))
                .stripTrailingZeros()
                .toPlainString();
        return amount < 0 ? "−" + digits : digits;
    }

    /** The text itself, or its first {@code most} UTF-16 units and an ellipsis; no character is cut in half. */
    public static String shortened(String text, int most) {
        if (text.length() <= most) {
            return text;
        }
        int end = Character.isHighSurrogate(text.charAt(most - 1)) ? most - 1 : most;
        return text.substring(0, end) + "…";
    }

    /** A difference with its sign: {@code +2}, {@code −1.5}. */
    public static String signed(double difference) {
        return difference < 0 ? number(difference) : "+" + number(difference);
    }
}
