package rosinbook.web;

import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

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

    /** For a year; not for names below ours, which others may serve (RFC 6797, section 6.1). */
    private static final String STRICTLY_SECURE = "max-age=31536000";

    /** What a browser says of our own pages, and of what somebody typed or had marked (W3C Fetch Metadata). */
    private static final Set<String> OWN_SITES = Set.of("same-origin", "none");

    /** What web servers add to what they pass on (RFC 7239; RFC 9110, section 7.6.3; and common practice). */
    private static final List<String> FROM_PROXIES =
            List.of("Forwarded", "X-Forwarded-For", "X-Forwarded-Host", "X-Forwarded-Proto", "X-Real-IP", "Via");

    private final Listening listening;

    Guard(Listening listening) {
        this.listening = listening;
    }

    /**
     * @throws Problem if the Host is not ours (DNS rebinding) or the Origin is another site; or if it came through a proxy,
     *     and nobody signs in
     */
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
        if (!listening.needsSignIn() && FROM_PROXIES.stream().anyMatch(name -> exchange.header(name) != null)) {
            throw new Problem(
                    403,
                    "behind-a-proxy",
                    "This notebook is open on its own computer only",
                    "This came through another web server, and nobody signs in here. To be reached from elsewhere, set a"
                            + " passphrase with: rosinbook passphrase, and start Rosinbook with --public-address.");
        }
        String origin = exchange.header("Origin");
        if (origin != null && !origin.equalsIgnoreCase(listening.linkBase(host))) {
            throw new Problem(403, "wrong-origin", "Another site sent this", "Only Rosinbook's own pages may do this.");
        }
        String site = exchange.header("Sec-Fetch-Site");
        boolean reads = exchange.method().name().equals("GET");
        if (!reads && site != null && !OWN_SITES.contains(site)) {
            throw new Problem(403, "wrong-origin", "Another site sent this", "Only Rosinbook's own pages may do this.");
        }
    }

    private static String nameOf(String host) {
        int port = host.lastIndexOf(':');
        boolean hasPort = port > host.lastIndexOf(']');
        return (hasPort ? host.substring(0, port) : host).toLowerCase(Locale.ROOT);
    }

    void setHeaders(Context exchange) {
        headers(exchange.path()).forEach(exchange::header);
        if (listening.isAlwaysSecure()) {
            exchange.header("Strict-Transport-Security", STRICTLY_SECURE);
        }
    }

    /** What every answer carries, by the path that was asked for. */
    static Map<String, String> headers(String path) {
        Map<String, String> headers = new LinkedHashMap<>();
        headers.put("Content-Security-Policy", CONTENT_POLICY);
        headers.put("X-Content-Type-Options", "nosniff");
        headers.put("Referrer-Policy", "same-origin");
        headers.put("Cross-Origin-Opener-Policy", "same-origin");
        headers.put("Cross-Origin-Resource-Policy", "same-origin");
        headers.put("Vary", "Accept-Encoding");
        headers.put("Permissions-Policy", "camera=(), geolocation=(), microphone=(), midi=(self)");
        if (path == null || path.startsWith("/api/")) {
            headers.put("Cache-Control", "no-store");
        }
        return headers;
    }
}
