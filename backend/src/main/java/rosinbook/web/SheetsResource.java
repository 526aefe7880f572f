package rosinbook.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import rosinbook.compare.Comparison;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Saved;
import rosinbook.readout.Phrasing;
import rosinbook.readout.Readout;

/** {@code /api/{kind}}: every kind of sheet, its revisions and comparisons. */
final class SheetsResource {
    private final Shelf shelf;

    SheetsResource(Shelf shelf) {
        this.shelf = shelf;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/{kind}", this::list);
        routes.post("/api/{kind}", this::create);
        routes.get("/api/{kind}/{id}", this::read);
        routes.put("/api/{kind}/{id}", this::save);
        routes.get("/api/{kind}/{id}/used-by", this::usedBy);
        routes.get("/api/{kind}/{id}/compare", this::compare);
        routes.get("/api/{kind}/{id}/revisions", this::history);
        routes.get("/api/{kind}/{id}/revisions/{number}", this::readRevision);
        routes.post("/api/{kind}/{id}/revisions/{number}/restore", this::restore);
    }

    private void list(Context exchange) {
        Kind kind = Requests.kind(exchange);
        Pages.Query query = new Pages.Query(
                Optional.of(kind),
                Requests.text(exchange, "q").orElse(""),
                Requests.text(exchange, "style").map(style -> style.toLowerCase(Locale.ROOT)),
                Requests.text(exchange, "after"),
                Requests.limit(exchange));
        Answers.json(exchange, shelf.notebook(exchange).look(pages -> {
            Pages.Page<Revision> page = pages.list(query);
            ListExtras extras = new ListExtras(pages, kind, page.items());
            return Answers.page(page, revision -> {
                ObjectNode envelope = Answers.envelope(revision, true);
                ObjectNode extra = extras.of(revision);
                if (!extra.isEmpty()) {
                    envelope.set("extras", extra);
                }
                return envelope;
            });
        }));
    }

    private void create(Context exchange) {
        Kind kind = Requests.kind(exchange);
        ObjectNode body = Requests.body(exchange, "content", "reason", "by", "id", "log");
        UUID id = Requests.optionalId(body, "id").orElseGet(UUID::randomUUID);
        Saved saved = shelf.notebook(exchange)
                .create(kind, id, content(body), Requests.note(exchange, body), log(kind, body));
        exchange.status(201);
        exchange.header("Location", "/api/" + kind.path() + "/" + id);
        answer(exchange, saved);
    }

    private static JsonNode content(ObjectNode body) {
        return Requests.optional(body, "content")
                .orElseThrow(() -> new InvalidContent("/content", "content is missing"));
    }

    private static Optional<JsonNode> log(Kind kind, ObjectNode body) {
        Optional<JsonNode> log = Requests.optional(body, "log");
        if (log.isPresent() && kind != Kind.RIGS) {
            throw new InvalidContent("/log", "only a rig is saved together with a log entry");
        }
        return log;
    }

    private void read(Context exchange) {
        Answers.revision(
                exchange,
                shelf.notebook(exchange).newest(Requests.kind(exchange), Requests.id(exchange)),
                Answers.object());
    }

    private void save(Context exchange) {
        Kind kind = Requests.kind(exchange);
        int basedOn = Requests.ifMatch(exchange);
        ObjectNode body = Requests.body(exchange, "content", "reason", "by", "log", "stayPinned");
        Saved saved = shelf.notebook(exchange)
                .save(
                        kind,
                        Requests.id(exchange),
                        basedOn,
                        content(body),
                        Requests.note(exchange, body),
                        log(kind, body),
                        stayPinned(body));
        answer(exchange, saved);
    }

    private static Set<UUID> stayPinned(ObjectNode body) {
        Set<UUID> ids = new HashSet<>();
        for (JsonNode id : Requests.list(body, "stayPinned")) {
            ids.add(Requests.uuidIn(id.asText())
                    .orElseThrow(
                            () -> new InvalidContent("/stayPinned", "stayPinned must be a list of ids of recipes")));
        }
        return ids;
    }

    private void answer(Context exchange, Saved saved) {
        ObjectNode extras = Answers.object();
        saved.mergedWith().ifPresent(theirs -> {
            extras.put("merged", true);
            extras.set("mergedWith", shelf.notebook(exchange).look(pages -> {
                JsonNode merged = saved.revision().json();
                JsonNode withoutTheirs = theirs.reversed().applyTo(merged);
                Phrasing words = SheetChanges.phrasing(pages, saved.revision().content());
                return Answers.tree(new Readout(words).changes(withoutTheirs, merged));
            }));
        });
        saved.logEntry().ifPresent(id -> extras.put("logId", id.toString()));
        if (!saved.followedOn().isEmpty()) {
            extras.set("followedOn", Answers.tree(saved.followedOn()));
        }
        Answers.revision(exchange, saved.revision(), extras);
    }

    private void usedBy(Context exchange) {
        Kind kind = Requests.kind(exchange);
        UUID id = Requests.id(exchange);
        Answers.json(exchange, shelf.notebook(exchange).look(pages -> {
            Notebook.find(pages, kind, Reference.newest(id));
            return Answers.items(pages.usedBy(id), use -> {
                ObjectNode entry = Answers.object()
                        .put("id", use.id().toString())
                        .put("kind", use.kind().path())
                        .put("title", use.title())
                        .put("relation", use.relation().name().toLowerCase(Locale.ROOT));
                use.revision().ifPresent(revision -> entry.put("revision", revision));
                return entry;
            });
        }));
    }

    private void compare(Context exchange) {
        Kind kind = Requests.kind(exchange);
        UUID id = Requests.id(exchange);
        Revision now = revisionOrNewest(exchange, kind, id, "now");
        Revision was = shelf.notebook(exchange)
                .revision(kind, id, Requests.queryNumber(exchange, "was", Math.max(1, now.number() - 1)));
        if ("patch".equals(exchange.queryParam("format"))) {
            exchange.result(Answers.bytes(Comparison.of(was.json(), now.json()).toJsonPatch()));
            exchange.contentType("application/json-patch+json");
            return;
        }
        ObjectNode json = Answers.object();
        json.set("was", Answers.envelope(was, false));
        json.set("now", Answers.envelope(now, false));
        json.set(
                "changes", Answers.tree(shelf.notebook(exchange).look(pages -> SheetChanges.between(pages, was, now))));
        Answers.json(exchange, json);
    }

    private Revision revisionOrNewest(Context exchange, Kind kind, UUID id, String name) {
        Revision newest = shelf.notebook(exchange).newest(kind, id);
        int number = Requests.queryNumber(exchange, name, newest.number());
        return number == newest.number() ? newest : shelf.notebook(exchange).revision(kind, id, number);
    }

    private void history(Context exchange) {
        Kind kind = Requests.kind(exchange);
        UUID id = Requests.id(exchange);
        int limit = Requests.limit(exchange);
        Optional<Integer> below =
                Requests.text(exchange, "after").map(after -> Requests.queryNumber(exchange, "after", 1));
        Answers.json(exchange, shelf.notebook(exchange).look(pages -> {
            Notebook.find(pages, kind, Reference.newest(id));
            return Answers.page(pages.history(id, limit, below), revision -> Answers.envelope(revision, false));
        }));
    }

    private void readRevision(Context exchange) {
        Kind kind = Requests.kind(exchange);
        int number = Requests.number(exchange);
        Answers.revision(
                exchange, shelf.notebook(exchange).revision(kind, Requests.id(exchange), number), Answers.object());
    }

    private void restore(Context exchange) {
        Kind kind = Requests.kind(exchange);
        int basedOn = Requests.ifMatch(exchange);
        ObjectNode body = Requests.body(exchange, "reason", "by");
        answer(
                exchange,
                shelf.notebook(exchange)
                        .restore(
                                kind,
                                Requests.id(exchange),
                                Requests.number(exchange),
                                basedOn,
                                Requests.note(exchange, body)));
    }
}
