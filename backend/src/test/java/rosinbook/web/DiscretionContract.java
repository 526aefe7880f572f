package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rosinbook.access.Access;
import rosinbook.access.Passphrase;
import rosinbook.log.LogFormat;
import rosinbook.notebook.ContentJson;
import rosinbook.store.Damage;
import rosinbook.store.Database;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.store.DatabaseSheetStore;
import rosinbook.testing.Logged;

/**
 * Requests of every kind, right ones, wrong ones and such that make the database fail, all full of secrets; then everything
 * that was logged is searched for them.
 */
abstract class DiscretionContract {
    private static final String WORD = "Oystercatcher";
    private static final String PASSPHRASE = WORD + " over the salt marsh";
    private static final String WRONG_PASSPHRASE = WORD + " under the salt marsh";
    private static final String KEY = WORD + "-opens-the-metrics-only";

    private final Set<String> secrets = new HashSet<>(Set.of(WORD));
    private final HttpClient client = HttpClient.newHttpClient();
    private final SettableClock clock = new SettableClock("2026-11-26T20:00:00Z");
    private Server server;

    /** A database of its own; closed by this test. */
    abstract Database fresh();

    private static Listening listening() {
        return new Listening("127.0.0.1", 0, Optional.of(URI.create("http://127.0.0.1")));
    }

    private HttpResponse<String> send(String method, String path, String cookie, String type, String body)
            throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(
                        URI.create("http://127.0.0.1:" + server.javalin().port() + path))
                .header("Cookie", cookie)
                .header("Content-Type", type)
                .header("User-Agent", WORD)
                .header("Referer", "http://127.0.0.1/s/" + WORD)
                .header("If-Match", "\"r1\"")
                .method(method, BodyPublishers.ofString(body));
        try {
            return client.send(request.build(), BodyHandlers.ofString());
        } catch (IOException closed) {
            // a connection that was closed after a body that nobody read, taken from the client's pool a moment too
            // early
            return client.send(request.build(), BodyHandlers.ofString());
        }
    }

    private HttpResponse<String> json(String method, String path, String cookie, String body)
            throws IOException, InterruptedException {
        return send(method, path, cookie, "application/json", body);
    }

    private HttpResponse<String> signIn(String passphrase) throws IOException, InterruptedException {
        String form = "name=owner&passphrase=" + URLEncoder.encode(passphrase, StandardCharsets.UTF_8);
        return send("POST", "/sign-in", "", "application/x-www-form-urlencoded", form);
    }

    private String secret(String text) {
        secrets.add(text);
        secrets.add(ContentJson.sha256(text));
        secrets.add(Base64.getEncoder().encodeToString(text.getBytes(StandardCharsets.UTF_8)));
        return text;
    }

    private static String piece(String title) {
        return "{\"content\":{\"title\":\"" + title + "\",\"notes\":\"" + WORD + "\"},\"by\":\"" + WORD
                + "\",\"reason\":\"" + WORD + "\"}";
    }

    @Test
    void nothing_secret_is_logged_whatever_is_asked_and_whatever_fails() throws Exception {
        try (Database database = fresh();
                Logged logged = new Logged(LogFormat.JSON)) {
            DatabaseSheetStore.onlyNotebook(database, clock.instant());
            new Access(new DatabaseAccessStore(database), clock, new SecureRandom())
                    .setPassphrase(new Passphrase(PASSPHRASE));
            server = Server.start(
                    database, listening(), clock, new Housekeeping(Optional.of(new MetricsKey(KEY)), Optional.empty()));
            try {
                String session = useIt();
                walkEveryRoute(session);
                signedOut();
                sendRubbish();
                breakIt(database, session);
            } finally {
                server.close();
            }
            String text = logged.text();
            assertTrue(logged.lines().stream().anyMatch(line -> line.has("trace")), "something failed: " + text);
            for (String secret : secrets) {
                for (String form : List.of(
                        secret, secret.toLowerCase(Locale.ROOT), URLEncoder.encode(secret, StandardCharsets.UTF_8))) {
                    assertFalse(text.contains(form), () -> lineWith(text, form));
                }
            }
        }
    }

    private static String lineWith(String text, String secret) {
        return secret + " stands in: "
                + text.lines().filter(line -> line.contains(secret)).findFirst().orElse("");
    }

    /** Signs in, saves, shares, opens. */
    private String useIt() throws IOException, InterruptedException {
        assertEquals(403, signIn(WRONG_PASSPHRASE).statusCode());
        String cookie = signIn(PASSPHRASE).headers().firstValue("Set-Cookie").orElseThrow();
        String session = cookie.substring(0, cookie.indexOf(';'));
        secret(session.substring(session.indexOf('=') + 1));
        assertEquals(201, json("POST", "/api/pieces", session, piece(WORD)).statusCode());
        String recipe = json(
                        "POST",
                        "/api/setlists",
                        session,
                        "{\"content\":{\"title\":\"" + WORD + "\",\"date\":\"2026-11-26\"}}")
                .body();
        String id = ContentJson.strict().readTree(recipe).path("id").asText();
        JsonNode share = ContentJson.strict()
                .readTree(json("POST", "/api/shares", session, "{\"kind\":\"setlists\",\"id\":\"" + id + "\"}")
                        .body());
        String token = secret(share.path("token").asText());
        assertTrue(token.length() > 15, share::toString);
        for (String rest : Set.of("", "/data", "/", "/data/x", "?x=" + WORD, "%00", "/%2e%2e")) {
            send("GET", "/s/" + token + rest, "", "text/plain", "");
            send("POST", "/s/" + token + rest, session, "text/plain", WORD);
        }
        send("GET", "/api/shares/qr?url=" + share.path("url").asText(), session, "text/plain", "");
        return session;
    }

    private void walkEveryRoute(String session) throws IOException, InterruptedException {
        for (String operation : Description.operations()) {
            String[] parts = operation.split(" ");
            String path = parts[1].replaceFirst("\\{kind}", "pieces").replaceAll("\\{[a-z]+}", WORD);
            if (path.equals("/sign-out")) {
                continue;
            }
            String query = "?q=" + WORD + "&after=" + WORD + "&notebook=" + WORD;
            walked(parts, path + query, session, "application/json", "{\"" + WORD + "\":\"" + WORD + "\"}");
            walked(parts, path, session, "application/json", "{" + WORD);
            walked(parts, path, session, "audio/midi", "MThd" + WORD);
            walked(parts, path, session, "application/zip", "PK" + WORD);
            walked(parts, path, session, WORD + "/" + WORD, WORD);
            walked(
                    parts,
                    path,
                    session,
                    "multipart/form-data; boundary=b",
                    "--b\r\nContent-Disposition: form-data; name=\"" + WORD + "\"; filename=\"" + WORD
                            + ".wav\"\r\n\r\n" + WORD + "\r\n--b");
        }
    }

    private void walked(String[] operation, String path, String session, String type, String body)
            throws IOException, InterruptedException {
        int status = send(operation[0], path, session, type, body).statusCode();
        assertTrue(status < 500, () -> String.join(" ", operation) + " was answered " + status);
    }

    private void signedOut() throws IOException, InterruptedException {
        for (String path :
                Set.of("/api/pieces?q=" + WORD, "/pieces/" + WORD, "/api/metrics", "/api/" + WORD, "/" + WORD)) {
            json("GET", path, "rosinbook-session=" + WORD, "");
            json("POST", path, "rosinbook-session=" + WORD, piece(WORD));
        }
    }

    /** Requests that no decent client would send, with bytes that could end a line or a header early. */
    private void sendRubbish() throws IOException {
        for (String request : Set.of(
                WORD + " / HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n",
                "GET /" + WORD + "\n" + WORD + " HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n",
                "GET /%zz" + WORD + " HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n",
                "GET /%0d%0a" + WORD + " HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n",
                "GET / " + WORD + "\r\nHost: 127.0.0.1\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: " + WORD + "\r\nHost: " + WORD + "\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: " + WORD + ":x\r\nConnection: close\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: 127.0.0.1\r\n" + WORD + "\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX: a\u0000\r" + WORD + "\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nCookie: rosinbook-session=\"" + WORD + "\\; \u0001=" + WORD
                        + "\r\nConnection: close\r\n\r\n",
                "POST /api/pieces HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: " + WORD + "\r\n\r\n",
                "POST /api/pieces HTTP/1.1\r\nHost: 127.0.0.1\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\n"
                        + WORD + "\r\n",
                "GET /" + WORD.repeat(1000) + " HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n")) {
            try (Socket socket = new Socket(
                    InetAddress.getLoopbackAddress(), server.javalin().port())) {
                socket.setSoTimeout(20_000);
                socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
                socket.shutdownOutput();
                socket.getInputStream().readAllBytes();
            }
        }
    }

    /** Makes the database refuse what it is given; PostgreSQL, for one, then quotes the whole row. */
    private void breakIt(Database database, String session) throws IOException, InterruptedException {
        Damage.execute(
                database,
                "ALTER TABLE revision ADD CONSTRAINT broken_a CHECK (saved_at < DATE '2000-01-01')" + notValid());
        assertEquals(
                500,
                json("POST", "/api/pieces", session, piece(WORD + " breaks")).statusCode());
        Damage.execute(
                database,
                "ALTER TABLE share ADD CONSTRAINT broken_b CHECK (created_at < DATE '2000-01-01')" + notValid());
        String sets = json("GET", "/api/setlists", session, "").body();
        String id = ContentJson.strict()
                .readTree(sets)
                .path("items")
                .path(0)
                .path("id")
                .asText();
        assertEquals(
                500,
                json(
                                "POST",
                                "/api/shares",
                                session,
                                "{\"kind\":\"setlists\",\"id\":\"" + id + "\",\"name\":\"" + WORD + "\"}")
                        .statusCode());
        clock.pass(Duration.ofHours(3)); // so that signing in is not too early after so many wrong tries
        Damage.execute(database, "DROP TABLE sign_in_session");
        assertEquals(500, signIn(PASSPHRASE).statusCode());
        assertEquals(500, json("GET", "/api/pieces?q=" + WORD, session, "").statusCode());
    }

    /** Lets a constraint be added to rows that break it. */
    abstract String notValid();
}
