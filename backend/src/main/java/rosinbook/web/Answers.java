package rosinbook.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Revision;

/** Writes answers. */
final class Answers {
    private static final ObjectMapper MAPPER =
            ContentJson.strict().copy().setDefaultPropertyInclusion(JsonInclude.Include.NON_ABSENT);

    private Answers() {}

    static ObjectNode object() {
        return MAPPER.createObjectNode();
    }

    static ArrayNode array() {
        return MAPPER.createArrayNode();
    }

    static <T extends JsonNode> T tree(Object value) {
        return MAPPER.valueToTree(value);
    }

    static byte[] bytes(Object value) {
        try {
            return MAPPER.writeValueAsBytes(value);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException("an answer could not be written", impossible);
        }
    }

    static void json(Context exchange, Object value) {
        written(exchange, bytes(value));
    }

    /** JSON that {@link #bytes} has written already. */
    static void written(Context exchange, byte[] json) {
        exchange.result(json);
        exchange.contentType("application/json");
    }

    /** A sheet's revision, with its ETag. */
    static void revision(Context exchange, Revision revision, ObjectNode extras) {
        exchange.header("ETag", etag(revision));
        ObjectNode envelope = envelope(revision, true);
        if (!extras.isEmpty()) {
            envelope.set("extras", extras);
        }
        json(exchange, envelope);
    }

    static String etag(Revision revision) {
        return "\"r" + revision.number() + "\"";
    }

    static ObjectNode envelope(Revision revision, boolean withContent) {
        ObjectNode json = object();
        json.put("id", revision.sheetId().toString());
        json.put("kind", revision.kind().path());
        json.put("title", revision.content().title());
        json.put("revision", revision.number());
        revision.parent().ifPresent(parent -> json.put("parent", parent));
        json.put("savedAt", revision.savedAt().toString());
        json.put("savedBy", revision.savedBy());
        json.put("reason", revision.reason());
        json.put("sha256", revision.sha256());
        if (withContent) {
            json.set("content", revision.json());
        }
        return json;
    }

    static <T> ObjectNode page(Pages.Page<T> page, Function<T, ? extends JsonNode> entry) {
        ObjectNode json = items(page.items(), entry);
        page.next().ifPresent(next -> json.put("next", next));
        return json;
    }

    static <T> ObjectNode items(List<T> entries, Function<T, ? extends JsonNode> entry) {
        ObjectNode json = object();
        ArrayNode items = json.putArray("items");
        entries.forEach(item -> items.add(entry.apply(item)));
        return json;
    }

    static void putIfPresent(ObjectNode json, String name, Optional<?> value) {
        value.ifPresent(present -> json.set(name, tree(present)));
    }
}
