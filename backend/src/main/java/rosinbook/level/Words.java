package rosinbook.level;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Figures and lists as a person would say them. */
final class Words {
    private Words() {}

    static String shortened(String text) {
        return text == null || text.length() <= 20 ? String.valueOf(text) : text.substring(0, 20) + "…";
    }

    /** Text with figures in it, always with a decimal point. */
    static String say(String pattern, Object... figures) {
        return String.format(Locale.ROOT, pattern, figures);
    }

    /** At most two decimals, and none that say nothing: 20, 20.5, 0.25. */
    static String number(double figure) {
        return BigDecimal.valueOf(figure)
                .setScale(2, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** "1", "1 and 3", "1, 3 and 4". */
    static String list(List<Integer> numbers) {
        if (numbers.size() < 2) {
            return numbers.stream().map(String::valueOf).collect(Collectors.joining());
        }
        int last = numbers.size() - 1;
        return numbers.subList(0, last).stream().map(String::valueOf).collect(Collectors.joining(", ")) + " and "
                + numbers.get(last);
    }
}
