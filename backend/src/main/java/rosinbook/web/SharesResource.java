package rosinbook.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Reference;
import rosinbook.share.QrCode;
import rosinbook.share.Share;
import rosinbook.share.SharePage;
import rosinbook.share.ShareToken;
import rosinbook.share.ShareView;
import rosinbook.share.Shares;

/** {@code /api/shares} for the player, {@code /s/{token}} for whoever was given the link. */
final class SharesResource {
    private static final Instant YEAR_10000 = Instant.parse("+10000-01-01T00:00:00Z");

    private final Shelf shelf;
    private final Listening listening;

    SharesResource(Shelf shelf, Listening listening) {
        this.shelf = shelf;
        this.listening = listening;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/shares", this::list);
        routes.post("/api/shares", this::make);
        routes.get("/api/shares/qr", this::qr);
        routes.delete("/api/shares/{id}", this::revoke);
        routes.get("/api/{kind}/{id}/file", this::file);
        routes.get("/s/{token}", this::page);
        routes.get("/s/{token}/data", this::data);
    }

    private void list(Context exchange) {
        Shares shares = shelf.shares(exchange);
        List<Share> made = shares.list();
        Map<UUID, String> titles = shares.titlesOf(made);
        Answers.json(exchange, Answers.items(made, share -> entry(shares, share, titles)));
    }

    private static ObjectNode entry(Shares shares, Share share, Map<UUID, String> titles) {
        ObjectNode entry = Answers.object();
        entry.put("id", share.id().toString());
        entry.put("name", share.name());
        entry.put("kind", share.kind().path());
        entry.put("sheetId", share.sheetId().toString());
        entry.put("title", titles.get(share.sheetId()));
        Answers.putIfPresent(entry, "revision", share.revision());
        entry.put("createdAt", share.createdAt().toString());
        Answers.putIfPresent(entry, "expiresAt", share.expiresAt());
        Answers.putIfPresent(entry, "revokedAt", share.revokedAt());
        Answers.putIfPresent(entry, "lastOpenedAt", share.lastOpenedAt());
        entry.put("opened", share.opened());
        entry.put("state", shares.state(share).name().toLowerCase(Locale.ROOT));
        return entry;
    }

    private void make(Context exchange) {
        ObjectNode body = Requests.body(exchange, "kind", "id", "revision", "name", "expiresAt");
        Kind kind = Kind.ofPath(Requests.string(body, "kind"))
                .filter(Share::isShareable)
                .orElseThrow(() -> new InvalidContent("/kind", "kind must be rigs, recipes or setlists"));
        UUID id = Requests.optionalId(body, "id").orElseThrow(() -> new InvalidContent("/id", "id is missing"));
        Optional<Integer> revision = Requests.optional(body, "revision").map(SharesResource::revision);
        Shares shares = shelf.shares(exchange);
        Shares.Made made = shares.make(kind, id, revision, Requests.limited(body, "name", 200), expiry(body));
        ObjectNode json = entry(shares, made.share(), shares.titlesOf(List.of(made.share())));
        json.put("token", made.token().text());
        json.put(
                "url",
                listening.linkBase(exchange.header("Host")) + "/s/"
                        + made.token().text());
        exchange.status(201);
        Answers.json(exchange, json);
    }

    private static int revision(JsonNode number) {
        if (!number.isInt() || number.intValue() < 1) {
            throw new InvalidContent(
                    "/revision", "revision must be a whole number from 1 on; leave it out to keep up to date");
        }
        return number.intValue();
    }

    private static Optional<Instant> expiry(ObjectNode body) {
        String text = Requests.string(body, "expiresAt");
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            Instant expiry = Instant.parse(text);
            if (expiry.isBefore(YEAR_10000)) {
                return Optional.of(expiry);
            }
        } catch (DateTimeException notATime) {
            // told below
        }
        throw new InvalidContent("/expiresAt", "expiresAt must be a time like 2026-12-31T22:00:00Z");
    }

    private void revoke(Context exchange) {
        if (!shelf.shares(exchange).revoke(Requests.id(exchange))) {
            throw new Problem(404, "no-such-share", "There is no such share", "Look it up in the list of shares.");
        }
        exchange.status(204);
    }

    private void qr(Context exchange) {
        String url = Requests.text(exchange, "url").orElse("");
        String own = listening.linkBase(exchange.header("Host")) + "/s/";
        if (!url.startsWith(own)
                || ShareToken.parse(url.substring(own.length())).isEmpty()) {
            throw new IllegalArgumentException("url is not the address of a share of this notebook");
        }
        exchange.result(QrCode.svg(url));
        exchange.contentType("image/svg+xml");
    }

    private void file(Context exchange) {
        Integer number = exchange.queryParam("revision") == null ? null : Requests.queryNumber(exchange, "revision", 1);
        Kind kind = Requests.kind(exchange);
        if (!Share.isShareable(kind)) {
            throw new NotFoundResponse();
        }
        ShareView view = shelf.shares(exchange).preview(kind, new Reference(Requests.id(exchange), number));
        exchange.header("Content-Disposition", FileName.attachment(view.title(), "rosinbook", "html"));
        exchange.result(SharePage.file(view).getBytes(StandardCharsets.UTF_8));
        exchange.contentType("text/html; charset=utf-8");
    }

    private void page(Context exchange) {
        keepToItself(exchange);
        Optional<byte[]> page =
                open(exchange, "page", view -> SharePage.page(view).getBytes(StandardCharsets.UTF_8));
        exchange.status(page.isPresent() ? 200 : 404);
        exchange.result(page.orElseGet(() -> SharePage.closed().getBytes(StandardCharsets.UTF_8)));
        exchange.contentType("text/html; charset=utf-8");
    }

    private void data(Context exchange) {
        keepToItself(exchange);
        Answers.written(
                exchange,
                open(exchange, "data", Answers::bytes)
                        .orElseThrow(
                                () -> new Problem(
                                        404,
                                        "no-such-share",
                                        "There is no such share",
                                        "This link does not open anything. It may have been closed, or run out. Ask whoever sent it for a new one.")));
    }

    private Optional<byte[]> open(Context exchange, String form, Function<ShareView, byte[]> draw) {
        return shelf.shared(exchange.pathParam("token")).flatMap(found -> shelf.shares(found.notebookId())
                .open(found.share(), form, !HeadAsGet.isHead(exchange), draw));
    }

    /** W3C TAG, Good Practices for Capability URLs: not sent on, not kept by others, not found by search engines. */
    private static void keepToItself(Context exchange) {
        exchange.header("Referrer-Policy", "no-referrer");
        exchange.header("Cache-Control", "private, no-store");
        exchange.header("X-Robots-Tag", "noindex, nofollow");
    }
}
