package rosinbook.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** What a file is called that is saved from the browser: its title, without what a file's name may not hold. */
final class FileName {
    private static final int LONGEST_TITLE = 60;

    private FileName() {}

    /**
     * Content-Disposition of a file; names that need more than ASCII are told in both ways.
     *
     * @param otherwise the name if the title has no letter and no digit
     * @param ending without the dot
     * @see "RFC 6266, section 4.3 and appendix D; RFC 8187"
     */
    static String attachment(String title, String otherwise, String ending) {
        String plain = named(title, "[^A-Za-z0-9]+", otherwise) + "." + ending;
        String whole = named(title, "[^\\p{L}\\p{M}\\p{N}]+", otherwise) + "." + ending;
        String disposition = "attachment; filename=\"" + plain + "\"";
        return whole.equals(plain) ? disposition : disposition + "; filename*=UTF-8''" + encoded(whole);
    }

    private static String named(String title, String others, String otherwise) {
        String name = title.replaceAll(others, "-").replaceAll("^-|-$", "");
        int letters = Math.min(LONGEST_TITLE, name.codePointCount(0, name.length()));
        return name.isEmpty() ? otherwise : name.substring(0, name.offsetByCodePoints(0, letters));
    }

    /** There is no space in it, and no star. */
    private static String encoded(String name) {
        return URLEncoder.encode(name, StandardCharsets.UTF_8);
    }
}
