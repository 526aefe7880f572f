package rosinbook.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Words;

/** {@code /api/search}, {@code /api/styles}, {@code /api/shapes}: finding things, and shapes to begin with. */
final class BrowseResource {
    private static final int SNIPPET_LENGTH = 120;

    private final Shelf shelf;
    private final JsonNode shapes;

    BrowseResource(Shelf shelf) {
        this.shelf = shelf;
        this.shapes = shapes();
    }

    private static JsonNode shapes() {
        try (InputStream file = BrowseResource.class.getResourceAsStream("/shapes.json")) {
            return ContentJson.parse(file.readAllBytes());
        } catch (IOException problem) {
            throw new IllegalStateException("shapes.json cannot be read", problem);
        }
    }

    void register(RoutesConfig routes) {
        routes.get("/api/search", this::search);
        routes.get("/api/styles", this::styles);
        routes.get("/api/shapes", exchange -> Answers.json(exchange, shapes));
    }

    private void search(Context exchange) {
        String words = Requests.text(exchange, "q").orElse("");
        Pages.Query query = new Pages.Query(Optional.empty(), words, Optional.empty(), Optional.empty(), 30);
        Answers.json(
                exchange,
                shelf.notebook(exchange)
                        .look(pages -> Answers.items(pages.list(query).items(), revision -> found(revision, words))));
    }

    private static ObjectNode found(Revision revision, String words) {
        return Answers.object()
                .put("id", revision.sheetId().toString())
                .put("kind", revision.kind().path())
                .put("title", revision.content().title())
                .put("snippet", snippet(revision, words));
    }

    /** The line in which the first of the words occurs; empty if that is the title. */
    private static String snippet(Revision revision, String words) {
        String first = words.strip().toLowerCase(Locale.ROOT).split("\\s+")[0];
        return revision.content()
                .searchWords()
                .flatMap(text -> Stream.of(text.split("\n")))
                .filter(line ->
                        !first.isEmpty() && line.toLowerCase(Locale.ROOT).contains(first))
                .map(line -> Words.shortened(line, SNIPPET_LENGTH))
                .findFirst()
                .orElse("");
    }

    private void styles(Context exchange) {
        Answers.json(
                exchange,
                shelf.notebook(exchange)
                        .look(pages ->
                                Answers.items(pages.styles().entrySet().stream().toList(), style -> Answers.object()
                                        .put("style", style.getKey())
                                        .put("pieces", style.getValue()))));
    }
}
