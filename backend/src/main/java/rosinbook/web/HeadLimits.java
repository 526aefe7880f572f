package rosinbook.web;

import io.javalin.http.Context;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.util.Enumeration;
import java.util.regex.Pattern;
import rosinbook.limit.Limit;

/** Holds a request's headers and query against their limits, and the encoding they name, before anything is made of them. */
final class HeadLimits {
    private static final Pattern STRAY_PERCENT = Pattern.compile("%(?![0-9A-Fa-f]{2})");

    private HeadLimits() {}

    /**
     * @throws rosinbook.limit.PastLimit at the first that is too much
     * @throws IllegalArgumentException if letters are said to be in an encoding that is not known, or the query cannot be read
     */
    static void check(Context exchange) {
        checkHeaders(exchange);
        checkEncoding(exchange.req().getHeader("Content-Type"));
        String query = exchange.queryString();
        if (query != null) {
            Limit.QUERY_LENGTH.check(query.length());
            Limit.QUERY_PARAMETERS.check(
                    1 + query.chars().filter(letter -> letter == '&').count());
            checkReadable(query);
        }
    }

    /** Javalin leaves out what it cannot read; then another notebook would be meant than the one that was named. */
    private static void checkReadable(String query) {
        if (STRAY_PERCENT.matcher(query).find()) {
            throw new IllegalArgumentException(
                    "a % in the query is not followed by two of 0-9 and A-F; write % itself as %25");
        }
    }

    private static void checkHeaders(Context exchange) {
        int count = 0;
        for (Enumeration<String> names = exchange.req().getHeaderNames(); names.hasMoreElements(); ) {
            for (Enumeration<String> lines = exchange.req().getHeaders(names.nextElement());
                    lines.hasMoreElements(); ) {
                Limit.HEADERS.check(++count);
                Limit.HEADER_LENGTH.check(lines.nextElement().length());
            }
        }
    }

    /** Javalin reads queries and bodies in the encoding that is named here, and fails at those it does not know. */
    private static void checkEncoding(String contentType) {
        for (String part : contentType == null ? new String[0] : contentType.split(";")) {
            String parameter = part.strip();
            if (parameter.regionMatches(true, 0, "charset", 0, 7) && !isKnown(unquoted(parameter))) {
                throw new IllegalArgumentException(
                        "the charset of Content-Type is not known here; say charset=utf-8, or leave it out");
            }
        }
    }

    /** What is said behind the equals sign; it may stand in quotes (RFC 9110, section 5.6.6). */
    private static String unquoted(String parameter) {
        return parameter.replaceFirst("^[^=]*=?", "").replaceFirst("^\"(.*)\"$", "$1");
    }

    private static boolean isKnown(String charset) {
        try {
            return Charset.isSupported(charset);
        } catch (IllegalCharsetNameException noName) {
            return false;
        }
    }
}
