package rosinbook.web;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import rosinbook.access.Access;

/**
 * What a browser keeps: the session's token; and at the computer itself, where nobody signs in, which notebook is open.
 *
 * @see "OWASP ASVS 5.0, 3.3: Secure, HttpOnly, SameSite, and a name that nobody but this host can set"
 */
final class SessionCookie {
    private static final String SESSION = "rosinbook-session";

    /** Browsers take such a cookie from this very host alone, and only if it is Secure. */
    private static final String OF_THIS_HOST = "__Host-";

    private static final String NOTEBOOK = "rosinbook-notebook";

    private final Listening listening;

    SessionCookie(Listening listening) {
        this.listening = listening;
    }

    /** The name of the session's cookie. */
    String session() {
        return listening.isSecure() ? OF_THIS_HOST + SESSION : SESSION;
    }

    Optional<String> token(Context exchange) {
        return Optional.ofNullable(exchange.cookie(session()));
    }

    /** Ends the session that this browser has had, if any: it would stay open where nobody looks for it. */
    void keep(Context exchange, String token, Access access) {
        token(exchange).ifPresent(access::signOut);
        exchange.cookie(cookie(session(), token, Access.SESSION));
    }

    void forget(Context exchange) {
        exchange.cookie(cookie(session(), "", Duration.ZERO));
    }

    Optional<String> notebook(Context exchange) {
        return Optional.ofNullable(exchange.cookie(NOTEBOOK));
    }

    void keepNotebook(Context exchange, UUID notebookId) {
        exchange.cookie(cookie(NOTEBOOK, notebookId.toString(), Access.SESSION));
    }

    private Cookie cookie(String name, String value, Duration age) {
        Cookie cookie = new Cookie(name, value);
        cookie.setPath("/");
        cookie.setHttpOnly(true);
        cookie.setSecure(listening.isSecure());
        cookie.setSameSite(SameSite.LAX);
        cookie.setMaxAge((int) age.toSeconds());
        return cookie;
    }
}
