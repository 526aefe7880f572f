package rosinbook.web;

import io.javalin.http.Context;
import java.util.Locale;

/**
 * Refuses requests that another site had a browser send, and sets the headers that keep pages to themselves.
 *
 * @see "OWASP ASVS 5.0, 3.4 and 3.5"
 */
final class Guard {
    private static final String CONTENT_POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
                    + " connect-src 'self'; font-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none';"
                    + " frame-ancestors 'none'";

    private final Listening listening;

    Guard(Listening listening) {
        this.listening = listening;
    }

    /** @throws Problem if the Host is not ours (DNS rebinding) or the Origin is another site */
    void check(Context exchange) {
        if (exchange.path().equals(HealthResource.PATH)) {
            return;
        }
        String host = exchange.header("Host");
        if (host == null || !listening.isOurs(nameOf(host))) {
            throw new Problem(
                    403,
                    "wrong-host",
                    "This address is not ours",
                    "Open Rosinbook under the address it printed when it started.");
        }
        String origin = exchange.header("Origin");
        if (origin != null && !origin.equalsIgnoreCase(listening.linkBase(host))) {
            throw new Problem(403, "wrong-origin", "Another site sent this", "Only Rosinbook's own pages may do this.");
        }
        String site = exchange.header("Sec-Fetch-Site");
        boolean reads = exchange.method().name().equals("GET")
                || exchange.method().name().equals("HEAD");
        if (!reads && "cross-site".equals(site)) {
            throw new Problem(403, "wrong-origin", "Another site sent this", "Only Rosinbook's own pages may do this.");
        }
    }

    private static String nameOf(String host) {
        int port = host.lastIndexOf(':');
        boolean hasPort = port > host.lastIndexOf(']');
        return (hasPort ? host.substring(0, port) : host).toLowerCase(Locale.ROOT);
    }

    static void setHeaders(Context exchange) {
        exchange.header("Content-Security-Policy", CONTENT_POLICY);
        exchange.header("X-Content-Type-Options", "nosniff");
        exchange.header("Referrer-Policy", "same-origin");
        exchange.header("Cross-Origin-Opener-Policy", "same-origin");
        exchange.header("Cross-Origin-Resource-Policy", "same-origin");
        exchange.header("Permissions-Policy", "camera=(), geolocation=(), microphone=(), midi=(self)");
        if (exchange.path().startsWith("/api/")) {
            exchange.header("Cache-Control", "no-store");
        }
    }
}
