package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;
import rosinbook.access.Access;
import rosinbook.access.Invitations;
import rosinbook.access.Passphrase;
import rosinbook.access.Player;

/** {@code /join/{token}}: an invited player chooses a passphrase, once. */
final class JoinResource {
    private final Invitations invitations;
    private final Access access;
    private final SessionCookie cookie;

    JoinResource(Invitations invitations, Access access, Listening listening) {
        this.invitations = invitations;
        this.access = access;
        this.cookie = new SessionCookie(listening);
    }

    void register(RoutesConfig routes) {
        routes.get("/join/{token}", this::page);
        routes.post("/join/{token}", this::join);
    }

    /** W3C TAG, Good Practices for Capability URLs: not kept by others, not found by search engines. */
    private static void keepToItself(Context exchange) {
        exchange.header("Cache-Control", "private, no-store");
        exchange.header("X-Robots-Tag", "noindex, nofollow");
    }

    private void page(Context exchange) {
        answer(exchange, 200, Optional.empty());
    }

    private void answer(Context exchange, int status, Optional<String> trouble) {
        keepToItself(exchange);
        String token = exchange.pathParam("token");
        Optional<Player> invited = invitations.invited(token);
        exchange.status(invited.isPresent() ? status : 404);
        exchange.html(
                invited.map(player -> JoinPage.page(token, player, trouble)).orElseGet(JoinPage::over));
    }

    private void join(Context exchange) {
        Form form = Form.of(exchange);
        Passphrase passphrase;
        try {
            passphrase = new Passphrase(form.field("passphrase"));
        } catch (IllegalArgumentException problem) {
            answer(exchange, 422, Optional.of("Not yet: " + problem.getMessage() + "."));
            return;
        }
        Optional<String> session = invitations.join(exchange.pathParam("token"), passphrase);
        if (session.isEmpty()) {
            answer(exchange, 404, Optional.empty());
            return;
        }
        keepToItself(exchange);
        cookie.keep(exchange, session.get(), access);
        exchange.redirect("/", HttpStatus.SEE_OTHER);
    }
}
