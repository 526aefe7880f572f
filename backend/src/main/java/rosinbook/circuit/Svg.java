package rosinbook.circuit;

import java.util.Locale;

/**
 * Writes SVG elements; every text is escaped and every style is an attribute, so that strict pages show it. Unless told
 * otherwise, words are centred and lines are 1.5 wide.
 */
final class Svg {
    /** Of words, if nothing else is said. */
    static final double USUAL_SIZE = 10.5;

    private final StringBuilder text = new StringBuilder();

    /** @param attributes such as {@code fill='none'}, written by us alone */
    Svg line(double x1, double y1, double x2, double y2, String attributes) {
        return element("<line x1='%s' y1='%s' x2='%s' y2='%s' %s/>", n(x1), n(y1), n(x2), n(y2), attributes);
    }

    Svg rect(double x, double y, double width, double height, String attributes) {
        return element("<rect x='%s' y='%s' width='%s' height='%s' %s/>", n(x), n(y), n(width), n(height), attributes);
    }

    Svg circle(double x, double y, double radius, String attributes) {
        return element("<circle cx='%s' cy='%s' r='%s' %s/>", n(x), n(y), n(radius), attributes);
    }

    Svg path(String data, String attributes) {
        return element("<path d='%s' %s/>", data, attributes);
    }

    Svg words(double x, double y, double size, String attributes, String words) {
        String whole = (size == USUAL_SIZE ? "" : " font-size='" + n(size) + "'")
                + (attributes.isEmpty() ? "" : " " + attributes);
        return element("<text x='%s' y='%s'%s>%s</text>", n(x), n(y), whole, escape(words));
    }

    Svg open(String attributes, String title) {
        text.append("<g ")
                .append(attributes)
                .append("><title>")
                .append(escape(title))
                .append("</title>\n");
        return this;
    }

    Svg close() {
        text.append("</g>\n");
        return this;
    }

    /** The whole drawing, titled and described for screen readers. */
    String document(double width, double height, String title, String description) {
        return String.format(
                        Locale.ROOT,
                        "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 %s %s' role='img'"
                                + " aria-labelledby='drawing-title drawing-description'"
                                + " font-family='system-ui, sans-serif' font-size='%s' text-anchor='middle'"
                                + " fill='#1d1a16' stroke='none' stroke-width='1.5'>%n"
                                + "<title id='drawing-title'>%s</title>%n<desc id='drawing-description'>%s</desc>%n"
                                + "<rect width='%s' height='%s' fill='#ffffff'/>%n",
                        n(width),
                        n(height),
                        n(USUAL_SIZE),
                        escape(title),
                        escape(description),
                        n(width),
                        n(height))
                + text + "</svg>\n";
    }

    /** For text and attributes; what XML 1.0 cannot hold becomes a replacement character. */
    static String escape(String words) {
        var escaped = new StringBuilder();
        words.codePoints().forEach(point -> {
            switch (point) {
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '&' -> escaped.append("&amp;");
                case '"' -> escaped.append("&quot;");
                case '\'' -> escaped.append("&#39;");
                default -> escaped.appendCodePoint(isXml(point) ? point : 0xFFFD);
            }
        });
        return escaped.toString();
    }

    /** Cut to a length that fits its place. */
    static String fit(String words, int max) {
        return words.codePointCount(0, words.length()) <= max
                ? words
                : words.substring(0, words.offsetByCodePoints(0, max - 1)) + "…";
    }

    private static boolean isXml(int point) {
        return point >= 0x20 && point <= 0xD7FF || point >= 0xE000 && point <= 0xFFFD || point >= 0x10000;
    }

    private static String n(double number) {
        return Figures.plain(Math.round(number * 10) / 10.0);
    }

    private Svg element(String form, Object... parts) {
        text.append(String.format(Locale.ROOT, form, parts)).append('\n');
        return this;
    }
}
