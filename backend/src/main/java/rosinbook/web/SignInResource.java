package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import rosinbook.access.Access;

/** {@code /sign-in} and {@code /sign-out}, and the door that asks for it. */
final class SignInResource {
    private static final String COOKIE = "rosinbook-session";
    private static final Set<String> OPEN_TO_ALL =
            Set.of("/sign-in", "/robots.txt", "/styles/share.css", "/icon.svg", HealthResource.PATH);

    private final Access access;
    private final Listening listening;

    SignInResource(Access access, Listening listening) {
        this.access = access;
        this.listening = listening;
    }

    void register(RoutesConfig routes) {
        routes.get("/sign-in", exchange -> page(exchange, Optional.empty()));
        routes.post("/sign-in", this::signIn);
        routes.post("/sign-out", this::signOut);
    }

    /** Lets everybody pass on this computer; from elsewhere only shares and whoever is signed in. */
    void check(Context exchange) {
        if (!listening.needsSignIn() || isOpenToAll(exchange.path()) || isSignedIn(exchange)) {
            return;
        }
        if (exchange.path().startsWith("/api/")) {
            throw new Problem(
                    401,
                    "sign-in-needed",
                    "Sign in first",
                    "Open /sign-in in this browser; what you typed stays here.");
        }
        exchange.redirect("/sign-in");
        exchange.skipRemainingHandlers();
    }

    private static boolean isOpenToAll(String path) {
        return OPEN_TO_ALL.contains(path) || path.startsWith("/s/");
    }

    private boolean isSignedIn(Context exchange) {
        String token = exchange.cookie(COOKIE);
        return token != null && access.isSignedIn(token);
    }

    private void page(Context exchange, Optional<String> trouble) {
        exchange.header("Cache-Control", "no-store");
        exchange.html(SignInPage.page(trouble));
    }

    private void signIn(Context exchange) {
        String typed = Optional.ofNullable(exchange.formParam("passphrase")).orElse("");
        Access.Outcome outcome = access.signIn(typed, exchange.ip());
        if (outcome.token().isPresent()) {
            exchange.cookie(cookie(outcome.token().get(), Access.SESSION));
            exchange.redirect("/", io.javalin.http.HttpStatus.SEE_OTHER);
            return;
        }
        if (outcome.delay().isZero()) {
            exchange.status(403);
            page(exchange, Optional.of("That is not the passphrase. Try again."));
            return;
        }
        long seconds = outcome.delay().toSeconds() + 1;
        exchange.status(429);
        exchange.header("Retry-After", Long.toString(seconds));
        page(exchange, Optional.of("Too many wrong tries. Wait " + seconds + " seconds, then try again."));
    }

    private void signOut(Context exchange) {
        Optional.ofNullable(exchange.cookie(COOKIE)).ifPresent(access::signOut);
        exchange.cookie(cookie("", Duration.ZERO));
        exchange.redirect("/sign-in", io.javalin.http.HttpStatus.SEE_OTHER);
    }

    private Cookie cookie(String value, Duration age) {
        Cookie cookie = new Cookie(COOKIE, value);
        cookie.setPath("/");
        cookie.setHttpOnly(true);
        cookie.setSecure(listening.isSecure());
        cookie.setSameSite(SameSite.LAX);
        cookie.setMaxAge((int) age.toSeconds());
        return cookie;
    }
}
