package rosinbook.web;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import rosinbook.access.Access;
import rosinbook.access.Passphrase;
import rosinbook.access.PlayerName;
import rosinbook.store.BackupFolder;
import rosinbook.store.Backups;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.testing.TestDatabase;

/**
 * A server that players reach from elsewhere. Ada owns a notebook that Jonas may write in and Lena may read; Oskar has one
 * of his own and knows nothing of Ada's; Mira is the keeper, and a stranger in Ada's notebook like everybody else.
 */
final class Band implements AutoCloseable {
    /** Somebody with an account: how they sign in, and in which notebook they play. */
    static final class Player {
        final String name;
        final String passphrase;
        String id;
        String notebook;
        String session;

        private Player(String name) {
            this.name = name;
            this.passphrase = name.toLowerCase(java.util.Locale.ROOT) + " plays in the kitchen";
        }
    }

    final SettableClock clock = new SettableClock("2026-11-12T20:00:00.123456Z");
    final TestDatabase database = TestDatabase.fresh();
    final Server server;
    final Player mira = new Player("Mira");
    final Player ada = new Player("Ada");
    final Player jonas = new Player("Jonas");
    final Player lena = new Player("Lena");
    final Player oskar = new Player("Oskar");

    /** Described operations that were answered with success, such as {@code GET /api/{kind}}. */
    final Set<String> succeeded = ConcurrentHashMap.newKeySet();

    private final Path backups;
    private final HttpClient client = HttpClient.newHttpClient();

    Band() throws IOException {
        this(false);
    }

    Band(boolean isBehindProxy) throws IOException {
        backups = Files.createTempDirectory("rosinbook-band");
        new Access(new DatabaseAccessStore(database.database()), clock, new SecureRandom())
                .setPassphrase(new PlayerName(mira.name), new Passphrase(mira.passphrase));
        server = Server.start(
                database.database(),
                new Listening("127.0.0.1", 0, Optional.of(URI.create("http://127.0.0.1")), isBehindProxy),
                clock,
                new Housekeeping(
                        Optional.empty(),
                        Optional.of(new Backups(database.database(), new BackupFolder(backups), clock))));
        signIn(mira);
        for (Player player : new Player[] {ada, jonas, lena, oskar}) {
            join(player);
        }
        let(jonas, "write");
        let(lena, "read");
    }

    private void join(Player player) {
        String link = as(mira).post("/api/players", "{'name':'" + player.name + "'}")
                .expect(201)
                .json()
                .path("invitation")
                .asText();
        Answer joined = new Caller("")
                .form(URI.create(link).getPath(), Map.of("passphrase", player.passphrase))
                .expect(303);
        player.session = session(joined);
        know(player);
    }

    /** Signs in and keeps the session. */
    void signIn(Player player) {
        player.session = session(new Caller("")
                .form("/sign-in", Map.of("name", player.name, "passphrase", player.passphrase))
                .expect(303));
        know(player);
    }

    /** Their notebook is the first they had, whichever else they own when they sign in again. */
    private void know(Player player) {
        if (player.id != null) {
            return;
        }
        var me = as(player).get("/api/me").expect(200).json();
        player.id = me.path("id").asText();
        player.notebook = me.path("notebook").path("id").asText();
    }

    /** The value of a cookie that is set; empty if there is none. */
    static String session(Answer answer) {
        return answer.header("Set-Cookie").replaceAll("^rosinbook-session=([^;]*);.*", "$1");
    }

    /** Gives a player a right on Ada's notebook. */
    void let(Player player, String may) {
        as(ada).put("/api/notebooks/" + ada.notebook + "/members/" + player.id, "{'may':'" + may + "'}")
                .expect(204);
    }

    Caller as(Player player) {
        return new Caller(player.session);
    }

    Caller stranger() {
        return new Caller("");
    }

    /** Somebody who calls the server in a session; every answer is held against the description of the API. */
    final class Caller {
        private final String session;
        private final Map<String, String> headers = new LinkedHashMap<>();

        Caller(String session) {
            this.session = session;
        }

        Caller with(String header, String text) {
            Caller same = new Caller(session);
            same.headers.putAll(headers);
            same.headers.put(header, text);
            return same;
        }

        /** Means this notebook from now on. */
        Caller in(String notebook) {
            return with("Rosinbook-Notebook", notebook);
        }

        Answer send(String method, String path, byte[] body) {
            HttpRequest.Builder request = HttpRequest.newBuilder(
                            URI.create("http://127.0.0.1:" + server.javalin().port() + path))
                    .method(method, BodyPublishers.ofByteArray(body));
            if (!session.isEmpty()) {
                request.header("Cookie", "rosinbook-session=" + session);
            }
            headers.forEach(request::header);
            try {
                Answer answer = Answer.of(client.send(request.build(), BodyHandlers.ofByteArray()));
                String rawPath = URI.create(path).getRawPath();
                Description.check(method, rawPath, answer);
                if (answer.status() < 400) {
                    Description.template(method, rawPath).ifPresent(template -> succeeded.add(method + " " + template));
                }
                return answer;
            } catch (IOException problem) {
                throw new java.io.UncheckedIOException(problem);
            } catch (InterruptedException problem) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException(problem);
            }
        }

        Answer get(String path) {
            return send("GET", path, new byte[0]);
        }

        Answer delete(String path) {
            return send("DELETE", path, new byte[0]);
        }

        Answer post(String path, String json) {
            return json("POST", path, json);
        }

        Answer put(String path, String json) {
            return json("PUT", path, json);
        }

        private Answer json(String method, String path, String json) {
            return with("Content-Type", "application/json")
                    .send(method, path, Api.quoted(json).getBytes(StandardCharsets.UTF_8));
        }

        Answer form(String path, Map<String, String> fields) {
            String body = String.join(
                    "&",
                    fields.entrySet().stream()
                            .map(field ->
                                    field.getKey() + "=" + URLEncoder.encode(field.getValue(), StandardCharsets.UTF_8))
                            .toList());
            return with("Content-Type", "application/x-www-form-urlencoded")
                    .send("POST", path, body.getBytes(StandardCharsets.UTF_8));
        }
    }

    @Override
    public void close() throws IOException {
        server.close();
        database.close();
        try (Stream<Path> left = Files.walk(backups)) {
            left.sorted(Comparator.reverseOrder()).forEach(path -> path.toFile().delete());
        }
    }
}
