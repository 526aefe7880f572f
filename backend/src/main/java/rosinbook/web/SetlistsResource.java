package rosinbook.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Setlist;
import rosinbook.readout.SetComparison;

/** {@code /api/setlists/…}: comparing two sets, and marking one as played. */
final class SetlistsResource {
    private final Shelf shelf;

    SetlistsResource(Shelf shelf) {
        this.shelf = shelf;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/setlists/compare", this::compare);
        routes.post("/api/setlists/{id}/played", this::played);
    }

    private void compare(Context exchange) {
        Reference was = Requests.reference(exchange, "was");
        Reference now = Requests.reference(exchange, "now");
        boolean all = Requests.flag(exchange, "all");
        List<Object> key = List.of("set comparison", was, now, all);
        Answers.written(exchange, shelf.notebook(exchange).look(pages -> pages.recall(key)
                .orElseGet(() -> pages.remember(key, read -> Answers.bytes(comparison(read, was, now, all))))));
    }

    private static ObjectNode comparison(Pages pages, Reference was, Reference now, boolean all) {
        pages.fetch(List.of(was, now));
        return comparison(
                pages, Notebook.find(pages, Kind.SETLISTS, was), Notebook.find(pages, Kind.SETLISTS, now), all);
    }

    static ObjectNode comparison(Pages pages, Revision was, Revision now, boolean all) {
        ObjectNode json = Answers.object();
        json.set("was", head(was));
        json.set("now", head(now));
        SetComparison comparison = SetComparison.of(pages, (Setlist) was.content(), (Setlist) now.content(), all);
        json.setAll((ObjectNode) Answers.tree(comparison));
        return json;
    }

    private static ObjectNode head(Revision revision) {
        Setlist set = (Setlist) revision.content();
        return Answers.object()
                .put("id", revision.sheetId().toString())
                .put("revision", revision.number())
                .put("title", set.title())
                .put("date", set.date().toString())
                .put("place", set.place())
                .put("state", set.played() ? "played" : "planned");
    }

    private void played(Context exchange) {
        int basedOn = Requests.ifMatch(exchange);
        ObjectNode body = Requests.body(exchange, "reason", "by");
        Revision played = shelf.notebook(exchange)
                .markPlayed(Requests.id(exchange), basedOn, Requests.note(exchange, body))
                .revision();
        Answers.revision(exchange, played, Answers.object());
    }
}
