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
 * @see "OWASP ASVS 5.0, 3.3: Secure, HttpOnly, SameSite"
 */
final class SessionCookie {
    private static final String SESSION = "rosinbook-session";
    private static final String NOTEBOOK = "rosinbook-notebook";

    private final Listening listening;

    SessionCookie(Listening listening) {
        this.listening = listening;
    }

    Optional<String> token(Context exchange) {
        return Optional.ofNullable(exchange.cookie(SESSION));
    }

    /** Ends the session that this browser has had, if any: it would stay open where nobody looks for it. */
    void keep(Context exchange, String token, Access access) {
        token(exchange).ifPresent(access::signOut);
        exchange.cookie(cookie(SESSION, token, Access.SESSION));
    }

    void forget(Context exchange) {
        exchange.cookie(cookie(SESSION, "", Duration.ZERO));
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
