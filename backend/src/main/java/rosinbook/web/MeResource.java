package rosinbook.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rosinbook.access.Access;
import rosinbook.access.NotebookEntry;
import rosinbook.access.Notebooks;
import rosinbook.access.Passphrase;
import rosinbook.access.Player;
import rosinbook.access.Session;
import rosinbook.notebook.InvalidContent;

/** {@code /api/me}: who asks, what they may open, their passphrase and their sessions. */
final class MeResource {
    private final Access access;
    private final Notebooks notebooks;
    private final Listening listening;
    private final SessionCookie cookie;

    MeResource(Access access, Notebooks notebooks, Listening listening) {
        this.access = access;
        this.notebooks = notebooks;
        this.listening = listening;
        this.cookie = new SessionCookie(listening);
    }

    void register(RoutesConfig routes) {
        routes.get("/api/me", this::me);
        routes.put("/api/me/passphrase", this::changePassphrase);
        routes.get("/api/me/sessions", this::sessions);
        routes.delete("/api/me/sessions", this::endOthers);
        routes.delete("/api/me/sessions/{session}", this::end);
    }

    private void me(Context exchange) {
        Visit visit = Visit.of(exchange);
        ObjectNode json = Answers.object();
        visit.player().ifPresent(player -> json.put("id", player.id().toString()));
        json.put("name", visit.player().map(player -> player.name().text()).orElse(""));
        json.put("keeper", visit.isKeeper());
        json.put("local", visit.session().isEmpty());
        List<NotebookEntry> entries = notebooks.of(visit.player());
        visit.open()
                .flatMap(open -> entries.stream()
                        .filter(entry -> entry.id().equals(open.notebookId()))
                        .findFirst())
                .ifPresent(entry -> json.set("notebook", NotebooksResource.entry(entry)));
        json.setAll(Answers.items(entries, NotebooksResource::entry));
        json.set("notebooks", json.remove("items"));
        Answers.json(exchange, json);
    }

    private void changePassphrase(Context exchange) {
        Session session = signedIn(exchange);
        ObjectNode body = Requests.body(exchange, "current", "next");
        Passphrase next = passphrase(Requests.string(body, "next"));
        Access.Change change = access.changePassphrase(
                session,
                cookie.token(exchange).orElseThrow(),
                Requests.string(body, "current"),
                next,
                ClientAddress.of(exchange, listening));
        if (change.isChanged()) {
            exchange.status(204);
            return;
        }
        if (change.delay().isZero()) {
            throw new InvalidContent("/current", "this is not your passphrase now; try again");
        }
        long seconds = change.delay().toSeconds() + 1;
        exchange.header("Retry-After", Long.toString(seconds));
        throw new Problem(
                429,
                "too-many-tries",
                "Too many wrong tries",
                "Wait " + seconds + " seconds, then try again. Nothing was changed.");
    }

    private static Passphrase passphrase(String typed) {
        try {
            return new Passphrase(typed);
        } catch (IllegalArgumentException problem) {
            throw new InvalidContent("/next", problem.getMessage());
        }
    }

    private static Session signedIn(Context exchange) {
        return Visit.of(exchange)
                .session()
                .orElseThrow(() -> new Problem(
                        409,
                        "nobody-signed-in",
                        "Nobody signs in on this computer",
                        "To be reached from elsewhere, set a passphrase with: rosinbook passphrase"));
    }

    private void sessions(Context exchange) {
        Visit visit = Visit.of(exchange);
        List<Session> sessions = visit.player().map(access::sessions).orElse(List.of());
        Answers.json(exchange, Answers.items(sessions, session -> Answers.object()
                .put("id", session.id().toString())
                .put("beganAt", session.beganAt().toString())
                .put("endsAt", session.endsAt().toString())
                .put(
                        "current",
                        visit.session()
                                .filter(own -> own.id().equals(session.id()))
                                .isPresent())));
    }

    private void end(Context exchange) {
        Optional<UUID> id = Requests.uuidIn(exchange.pathParam("session"));
        Optional<Player> player = Visit.of(exchange).player();
        if (id.isEmpty() || player.isEmpty() || !access.end(player.get(), id.get())) {
            throw new Problem(404, "no-such-session", "There is no such session", "It has ended, or is none of yours.");
        }
        exchange.status(204);
    }

    private void endOthers(Context exchange) {
        Visit.of(exchange).session().ifPresent(access::endOthers);
        exchange.status(204);
    }
}
