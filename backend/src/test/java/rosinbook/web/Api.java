package rosinbook.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import rosinbook.access.Access;
import rosinbook.access.Passphrase;
import rosinbook.notebook.ContentJson;
import rosinbook.store.Database;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.store.DatabaseSheetStore;

/** The real server over a database of its own, and somebody who calls it. */
final class Api implements AutoCloseable {
    /** The evening on which these tests take place. */
    final SettableClock clock = new SettableClock("2026-11-12T20:00:00.123456Z");

    final String databaseName = "t" + UUID.randomUUID();
    final String address;
    private final Database database = Database.inMemory(databaseName);
    final Server server = Server.start(database, 0, clock);
    /** Described operations that were answered with success, such as {@code GET /api/{kind}}. */
    final Set<String> succeeded = ConcurrentHashMap.newKeySet();

    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(10)).build();

    Api() {
        address = server.address().replaceAll("/$", "");
    }

    /** JSON with single quotes for double ones. */
    static String quoted(String json) {
        return json.replace('\'', '"');
    }

    static JsonNode json(String text) {
        return ContentJson.parse(quoted(text).getBytes(StandardCharsets.UTF_8));
    }

    static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    void setPassphrase(String words) {
        new Access(new DatabaseAccessStore(database, DatabaseSheetStore.ONLY_NOTEBOOK), clock, new SecureRandom())
                .setPassphrase(new Passphrase(words));
    }

    /** A request to be sent with {@link #send}. */
    HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create(address + path)).timeout(Duration.ofSeconds(30));
    }

    /** Sends it, and holds the answer against the description of the API. */
    Answer send(HttpRequest.Builder builder) {
        HttpRequest request = builder.build();
        Answer answer = exchange(request);
        String path = request.uri().getRawPath();
        Description.check(request.method(), path, answer);
        if (answer.status() < 400) {
            Description.template(request.method(), path)
                    .ifPresent(template -> succeeded.add(request.method() + " " + template));
        }
        return answer;
    }

    private Answer exchange(HttpRequest request) {
        try {
            return Answer.of(client.send(request, BodyHandlers.ofByteArray()));
        } catch (IOException problem) {
            throw new java.io.UncheckedIOException(problem);
        } catch (InterruptedException problem) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(problem);
        }
    }

    private static HttpRequest.Builder withJson(HttpRequest.Builder request, String method, String json) {
        return request.header("Content-Type", "application/json").method(method, BodyPublishers.ofString(quoted(json)));
    }

    Answer get(String path) {
        return send(to(path));
    }

    Answer delete(String path) {
        return send(to(path).DELETE());
    }

    Answer post(String path, String json) {
        return accepted("POST", path, json, send(withJson(to(path), "POST", json)));
    }

    /** A POST that builds on a revision. */
    Answer post(String path, int revision, String json) {
        return accepted(
                "POST", path, json, send(withJson(to(path), "POST", json).header("If-Match", "\"r" + revision + "\"")));
    }

    Answer put(String path, int revision, String json) {
        return accepted(
                "PUT", path, json, send(withJson(to(path), "PUT", json).header("If-Match", "\"r" + revision + "\"")));
    }

    /** What is accepted must be described, too. */
    private static Answer accepted(String method, String path, String body, Answer answer) {
        if (answer.status() < 300) {
            Description.checkRequest(method, path, json(body));
        }
        return answer;
    }

    /** A new sheet; its answer is the envelope. */
    Answer create(String kind, String content) {
        return post("/api/" + kind, "{'content':" + content + ",'by':'Mira','reason':'for a test'}")
                .expect(201);
    }

    /** Saves content over a revision and expects that to work. */
    Answer save(String kind, String id, int revision, String content) {
        return put("/api/" + kind + "/" + id, revision, "{'content':" + content + ",'by':'Mira','reason':''}")
                .expect(200);
    }

    @Override
    public void close() {
        server.close();
        database.close();
    }
}
