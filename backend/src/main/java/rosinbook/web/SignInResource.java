package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;
import rosinbook.access.Access;

/** {@code /sign-in} and {@code /sign-out}. */
final class SignInResource {
    private final Access access;
    private final Listening listening;
    private final SessionCookie cookie;

    SignInResource(Access access, Listening listening) {
        this.access = access;
        this.listening = listening;
        this.cookie = new SessionCookie(listening);
    }

    void register(RoutesConfig routes) {
        routes.get("/sign-in", exchange -> {
            page(exchange, "", AskedPage.of(exchange.queryParam(AskedPage.NAME)), Optional.empty());
        });
        routes.post("/sign-in", this::signIn);
        routes.post("/sign-out", this::signOut);
    }

    private static void page(Context exchange, String name, String asked, Optional<String> trouble) {
        exchange.header("Cache-Control", "no-store");
        exchange.html(SignInPage.page(name, asked, trouble));
    }

    private void signIn(Context exchange) {
        Form form = Form.of(exchange);
        String name = form.field("name");
        String asked = AskedPage.of(form.field(AskedPage.NAME));
        Access.Outcome outcome = access.signIn(name, form.field("passphrase"), ClientAddress.of(exchange, listening));
        if (outcome.token().isPresent()) {
            cookie.keep(exchange, outcome.token().get(), access);
            exchange.header("Cache-Control", "no-store");
            exchange.redirect(asked, HttpStatus.SEE_OTHER);
            return;
        }
        if (outcome.delay().isZero()) {
            exchange.status(403);
            page(exchange, name, asked, Optional.of("That is not the name and the passphrase of a player. Try again."));
            return;
        }
        long seconds = outcome.delay().toSeconds() + 1;
        exchange.status(429);
        exchange.header("Retry-After", Long.toString(seconds));
        page(exchange, name, asked, Optional.of("Too many wrong tries. Wait " + seconds + " seconds, then try again."));
    }

    private void signOut(Context exchange) {
        cookie.token(exchange).ifPresent(access::signOut);
        cookie.forget(exchange);
        exchange.header("Cache-Control", "no-store");
        exchange.redirect("/sign-in", HttpStatus.SEE_OTHER);
    }
}
