package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpHeaders;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.StreamSupport;
import rosinbook.notebook.ContentJson;

/** What the server said. */
record Answer(int status, Map<String, List<String>> headers, byte[] bytes) {
    static Answer of(HttpResponse<byte[]> response) {
        return new Answer(response.statusCode(), response.headers().map(), response.body());
    }

    /** Itself, if it has this status. */
    Answer expect(int expected) {
        assertEquals(expected, status, this::text);
        return this;
    }

    /** The problem it tells of, if it is one of this status and type. */
    JsonNode problem(int expected, String type) {
        expect(expected);
        assertEquals("application/problem+json", header("Content-Type"));
        JsonNode problem = json();
        assertEquals("/problems/" + type, problem.path("type").asText(), this::text);
        assertEquals(expected, problem.path("status").asInt());
        assertEquals(header("Request-Id"), problem.path("requestId").asText());
        assertTrue(
                problem.path("title").asText().length() > 5
                        && problem.path("detail").asText().length() > 5,
                text());
        return problem;
    }

    /** Everything but the moment and the request's own name; two answers in which this is the same cannot be told apart. */
    String likeOthers() {
        Map<String, List<String>> shown = new TreeMap<>(headers);
        shown.remove("date");
        shown.remove("request-id");
        return status + " " + shown + " " + text().replace(header("Request-Id"), "(its id)");
    }

    String text() {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    JsonNode json() {
        try {
            return ContentJson.strict().readTree(bytes);
        } catch (java.io.IOException problem) {
            throw new AssertionError("not JSON: " + text(), problem);
        }
    }

    /** The entries of a list. */
    List<JsonNode> items() {
        return StreamSupport.stream(json().path("items").spliterator(), false).toList();
    }

    /** First header of that name; empty if there is none. */
    String header(String name) {
        return HttpHeaders.of(headers, (key, text) -> true).firstValue(name).orElse("");
    }

    String id() {
        return json().path("id").asText();
    }

    int revision() {
        return json().path("revision").asInt();
    }

    JsonNode content() {
        return json().path("content");
    }
}
