package rosinbook.web;

import io.javalin.http.Context;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.util.Enumeration;
import rosinbook.limit.Limit;

/** Holds a request's headers and query against their limits, and the encoding they name, before anything is made of them. */
final class HeadLimits {
    private HeadLimits() {}

    /**
     * @throws rosinbook.limit.PastLimit at the first that is too much
     * @throws IllegalArgumentException if letters are said to be in an encoding that is not known
     */
    static void check(Context exchange) {
        checkHeaders(exchange);
        checkEncoding(exchange.req().getHeader("Content-Type"));
        String query = exchange.queryString();
        if (query != null) {
            Limit.QUERY_LENGTH.check(query.length());
            Limit.QUERY_PARAMETERS.check(
                    1 + query.chars().filter(letter -> letter == '&').count());
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

    /** Javalin reads queries and bodies in the encoding that is named here, without quotes, and fails at others. */
    private static void checkEncoding(String contentType) {
        for (String part : contentType == null ? new String[0] : contentType.split(";")) {
            String parameter = part.strip();
            if (parameter.regionMatches(true, 0, "charset", 0, 7) && !isKnown(parameter.replaceFirst("^[^=]*=?", ""))) {
                throw new IllegalArgumentException(
                        "the charset of Content-Type is not known here; say charset=utf-8, or leave it out");
            }
        }
    }

    private static boolean isKnown(String charset) {
        try {
            return Charset.isSupported(charset);
        } catch (IllegalCharsetNameException noName) {
            return false;
        }
    }
}
