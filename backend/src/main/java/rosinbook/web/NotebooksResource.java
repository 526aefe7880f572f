package rosinbook.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.UUID;
import rosinbook.access.Access;
import rosinbook.access.LastOwner;
import rosinbook.access.Member;
import rosinbook.access.NotebookEntry;
import rosinbook.access.Notebooks;
import rosinbook.access.Right;
import rosinbook.notebook.InvalidContent;

/** {@code /api/notebooks}: making, naming and opening them, and letting others in. */
final class NotebooksResource {
    private final Notebooks notebooks;
    private final Access access;
    private final SessionCookie cookie;

    NotebooksResource(Notebooks notebooks, Access access, Listening listening) {
        this.notebooks = notebooks;
        this.access = access;
        this.cookie = new SessionCookie(listening);
    }

    void register(RoutesConfig routes) {
        routes.post("/api/notebooks", this::make);
        routes.put("/api/notebooks/{notebook}", this::rename);
        routes.post("/api/notebooks/{notebook}/open", this::open);
        routes.get("/api/notebooks/{notebook}/members", this::members);
        routes.put("/api/notebooks/{notebook}/members/{player}", this::let);
        routes.delete("/api/notebooks/{notebook}/members/{player}", this::remove);
        routes.exception(
                LastOwner.class,
                (problem, exchange) -> Problems.answer(
                        exchange, new Problem(409, "last-owner", "Somebody must own it", problem.getMessage())));
    }

    static ObjectNode entry(NotebookEntry entry) {
        return Answers.object()
                .put("id", entry.id().toString())
                .put("title", entry.title())
                .put("may", entry.may().word())
                .put("ownedBy", String.join(", ", entry.owners()));
    }

    private void make(Context exchange) {
        NotebookEntry made = notebooks.add(title(exchange), Visit.of(exchange).player());
        exchange.status(201);
        Answers.json(exchange, entry(made));
    }

    private void rename(Context exchange) {
        Visit visit = Visit.of(exchange);
        notebooks.rename(visit.notebookId(), title(exchange));
        Answers.json(
                exchange,
                entry(notebooks.find(visit.notebookId(), visit.player()).orElseThrow(Visit::noSuchNotebook)));
    }

    private static String title(Context exchange) {
        String title =
                Requests.string(Requests.body(exchange, "title"), "title").strip();
        if (title.isEmpty() || title.length() > NotebookEntry.LONGEST_TITLE || title.indexOf('\0') >= 0) {
            throw new InvalidContent(
                    "/title",
                    "title has " + title.length() + " characters; give 1 to " + NotebookEntry.LONGEST_TITLE
                            + ", none of them NUL");
        }
        return title;
    }

    /** Opens it in this session from now on; at the computer itself, in this browser. */
    private void open(Context exchange) {
        Requests.body(exchange);
        Visit visit = Visit.of(exchange);
        visit.session()
                .ifPresentOrElse(
                        session -> access.open(session, visit.notebookId()),
                        () -> cookie.keepNotebook(exchange, visit.notebookId()));
        exchange.status(204);
    }

    private void members(Context exchange) {
        Answers.json(
                exchange, Answers.items(notebooks.members(Visit.of(exchange).notebookId()), NotebooksResource::member));
    }

    private static ObjectNode member(Member member) {
        return Answers.object()
                .put("player", member.player().id().toString())
                .put("name", member.player().name().text())
                .put("may", member.may().word());
    }

    private void let(Context exchange) {
        String word = Requests.string(Requests.body(exchange, "may"), "may");
        Right may = Right.ofWord(word).orElseThrow(() -> new InvalidContent("/may", "may must be read, write or own"));
        UUID playerId = PlayersResource.playerId(exchange);
        if (!notebooks.let(Visit.of(exchange).notebookId(), playerId, may)) {
            throw PlayersResource.noSuchPlayer();
        }
        exchange.status(204);
    }

    private void remove(Context exchange) {
        if (!notebooks.remove(Visit.of(exchange).notebookId(), PlayersResource.playerId(exchange))) {
            throw new Problem(
                    404,
                    "no-such-member",
                    "This player has no right on this notebook",
                    "Look who has under the notebook's members.");
        }
        exchange.status(204);
    }
}
