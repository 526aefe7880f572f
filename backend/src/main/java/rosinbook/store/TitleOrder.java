package rosinbook.store;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.HexFormat;
import java.util.Locale;
import java.util.regex.Pattern;

/** In which order titles stand: by letters, whatever their case and accents; the same on every database. */
final class TitleOrder {
    /** An index takes no keys of any length; titles that differ only behind this stand by their ids. */
    private static final int MOST_BYTES = 400;

    private static final Pattern ACCENTS = Pattern.compile("\\p{M}+");

    private TitleOrder() {}

    /** Sorts as the titles do: hexadecimal digits, which stand in one order in every language's. */
    static String key(String title) {
        byte[] bytes = text(title).getBytes(StandardCharsets.UTF_8);
        return HexFormat.of().formatHex(bytes, 0, Math.min(bytes.length, MOST_BYTES));
    }

    /** What the key is made of; the text of a text is itself. */
    static String text(String title) {
        String lower = ACCENTS.matcher(Normalizer.normalize(title, Normalizer.Form.NFD))
                .replaceAll("")
                .toLowerCase(Locale.ROOT);
        return ACCENTS.matcher(Normalizer.normalize(lower, Normalizer.Form.NFD)).replaceAll("");
    }
}
