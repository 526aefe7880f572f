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
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import rosinbook.access.Access;
import rosinbook.access.Passphrase;
import rosinbook.notebook.ContentJson;
import rosinbook.store.BackupFolder;
import rosinbook.store.Backups;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.store.DatabaseSheetStore;
import rosinbook.testing.TestDatabase;

/** The real server over a database of its own, and somebody who calls it. */
final class Api implements AutoCloseable {
    private static final String KEEPERS_WORDS = "four strings and a bow";

    /** The evening on which these tests take place. */
    final SettableClock clock = new SettableClock("2026-11-12T20:00:00.123456Z");

    final TestDatabase database;
    /** Where backups are kept. */
    final Path backups = Path.of("target", "test-backups", UUID.randomUUID().toString());

    final String address;
    final Server server;
    /** Described operations that were answered with success, such as {@code GET /api/{kind}}. */
    final Set<String> succeeded = ConcurrentHashMap.newKeySet();

    /** Sent with every request, where people sign in; empty at home. */
    private String cookie = "";

    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(10)).build();

    Api() {
        this(Patience.USUAL);
    }

    Api(Patience patience) {
        this(TestDatabase.fresh(), patience);
    }

    /** @param database closed together with this */
    Api(TestDatabase database, Patience patience) {
        this(database, patience, Listening.here(0));
    }

    private Api(TestDatabase database, Patience patience, Listening listening) {
        this.database = database;
        server = Server.start(database.database(), listening, clock, housekeeping(), patience);
        address = "http://127.0.0.1:" + server.javalin().port();
    }

    /** One that is reached from elsewhere, with its keeper signed in. */
    static Api signedIn() {
        TestDatabase database = TestDatabase.fresh();
        Clock clock = Clock.systemUTC();
        DatabaseSheetStore.onlyNotebook(database.database(), clock.instant());
        setPassphrase(database, KEEPERS_WORDS, clock);
        Listening elsewhere = new Listening("127.0.0.1", 0, Optional.of(URI.create("http://127.0.0.1")));
        Api api = new Api(database, Patience.USUAL, elsewhere);
        api.signIn();
        return api;
    }

    /** Signs the keeper in again, after so long that no wrong tries count any more. */
    void signIn() {
        clock.pass(Duration.ofHours(2));
        cookie = "";
        String form = "name=owner&passphrase=" + encoded(KEEPERS_WORDS);
        Answer answer = exchange(to("/sign-in")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString(form))
                .build());
        cookie = answer.expect(303).header("Set-Cookie").replaceAll(";.*", "");
    }

    String cookie() {
        return cookie;
    }

    private Housekeeping housekeeping() {
        return new Housekeeping(
                Optional.empty(), Optional.of(new Backups(database.database(), new BackupFolder(backups), clock)));
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
        setPassphrase(database, words, clock);
    }

    private static void setPassphrase(TestDatabase database, String words, Clock clock) {
        new Access(new DatabaseAccessStore(database.database()), clock, new SecureRandom())
                .setPassphrase(new Passphrase(words));
    }

    /** A request to be sent with {@link #send}. */
    HttpRequest.Builder to(String path) {
        HttpRequest.Builder request =
                HttpRequest.newBuilder(URI.create(address + path)).timeout(Duration.ofSeconds(30));
        return cookie.isEmpty() ? request : request.header("Cookie", cookie);
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
