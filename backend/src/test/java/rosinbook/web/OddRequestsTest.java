package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.net.Socket;
import java.net.SocketException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import rosinbook.store.RowCounts;
import rosinbook.testing.TestDatabase;

/**
 * Every operation of the description, with requests that are good but for something: never a failure of ours, always a problem
 * that says what is wrong, never long, and what is refused changes nothing.
 *
 * <p>The short form uses the same seeds every time. {@code -Drosinbook.fuzz.minutes=10} goes on with fresh ones; a failure
 * prints its seed and keeps the request in {@code target/fuzz}; {@code -Drosinbook.fuzz.seed=} repeats one.
 */
class OddRequestsTest {
    private static final int SHORT_FORM = 2_500;
    private static final Duration FAR_ABOVE_NORMAL = Duration.ofSeconds(20);

    @Test
    void whatever_is_asked_the_answer_is_fair() throws IOException {
        ask(Api::new, shortForm());
    }

    @Test
    void whatever_is_asked_where_people_sign_in_the_answer_is_fair() throws IOException {
        ask(Api::signedIn, shortForm() / 3);
    }

    /** On PostgreSQL fewer: what is new there is the database alone. */
    private static int shortForm() {
        return TestDatabase.inUse() == TestDatabase.Product.H2 ? SHORT_FORM : SHORT_FORM / 3;
    }

    private static void ask(Supplier<Api> notebook, int shortForm) throws IOException {
        long minutes = Long.getLong("rosinbook.fuzz.minutes", 0);
        Long one = Long.getLong("rosinbook.fuzz.seed");
        long first = one != null ? one : minutes > 0 ? new Random().nextLong() : 20_261_126;
        long end = System.nanoTime() + Duration.ofMinutes(minutes).toNanos();
        Map<String, Integer> statuses = new TreeMap<>();
        List<String> findings = new ArrayList<>();
        int tried = 0;
        for (long round = 0; round == 0 || one == null && minutes > 0 && System.nanoTime() < end; round++) {
            try (Api api = notebook.get()) {
                OddRequests requests = new OddRequests(api);
                for (int i = 0; i < (one != null ? 1 : shortForm) && (minutes == 0 || System.nanoTime() < end); i++) {
                    long seed = first + tried++;
                    OddRequests.Odds odds = requests.of(seed);
                    try {
                        int status = send(api, odds);
                        statuses.merge(odds.operation() + " " + status, 1, Integer::sum);
                        if (!api.cookie().isEmpty() && api.get("/api/pieces").status() == 401) {
                            api.signIn(); // it was asked to end the session
                        }
                    } catch (AssertionError | IOException problem) {
                        findings.add("seed " + seed + " " + odds.operation() + " " + odds.path() + ": "
                                + problem.getMessage() + " kept in "
                                + OddRequests.keep(seed + ".http", odds.bytes()));
                    }
                }
                readEverything(api, requests);
            }
        }
        if (minutes > 0 || one != null) {
            System.out.println(tried + " odd requests from seed " + first + ": " + statuses);
        }
        assertTrue(findings.isEmpty(), () -> findings.size() + " findings:\n" + String.join("\n", findings));
    }

    private static int send(Api api, OddRequests.Odds odds) throws IOException {
        List<Integer> before = RowCounts.of(api.database.database());
        long start = System.nanoTime();
        Answer answer = answer(api, odds.bytes());
        Duration took = Duration.ofNanos(System.nanoTime() - start);
        assertTrue(took.compareTo(FAR_ABOVE_NORMAL) < 0, "took " + took);
        assertTrue(answer.status() >= 200 && answer.status() < 500, () -> answer.status() + " " + answer.text());
        if (answer.status() >= 400) {
            String type = answer.header("Content-Type");
            boolean page = type.startsWith("text/html") && !odds.path().startsWith("/api/");
            assertTrue(page || type.equals("application/problem+json"), () -> "answered as " + type);
            assertTrue(page || answer.json().path("detail").asText().length() > 5, answer::text);
            assertEquals(
                    before,
                    RowCounts.of(api.database.database()),
                    () -> "changed something and answered " + answer.text());
        }
        String method = odds.operation().split(" ")[0];
        Description.check(method, odds.path().split("\\?")[0], answer);
        return answer.status();
    }

    private static Answer answer(Api api, byte[] request) throws IOException {
        try (Socket socket = RawHttp.open(api)) {
            socket.setSoTimeout((int) FAR_ABOVE_NORMAL.toMillis());
            try {
                socket.getOutputStream().write(request);
            } catch (SocketException refusedWhileSending) {
                // the answer may be there already
            }
            Answer answer = WireAnswer.read(new BufferedInputStream(socket.getInputStream()));
            assertNotNull(answer, "there was no answer");
            return answer;
        }
    }

    /** Whatever was let in can be read, compared, resolved, shared, exported and imported. */
    private static void readEverything(Api api, OddRequests requests) {
        requests.known(api).forEach((kind, ids) -> {
            for (String id : ids) {
                String path = "/api/" + kind + "/" + id;
                api.get(path).expect(200);
                api.get(path + "/compare?was=1").expect(200);
                api.get(path + "/used-by").expect(200);
                if (kind.equals("recipes")) {
                    api.get(path + "/resolved").expect(200);
                }
                if (List.of("rigs", "recipes", "setlists").contains(kind)) {
                    api.get(path + "/file").expect(200);
                }
            }
        });
        api.get("/api/tonight").expect(200);
        byte[] archive = api.get("/api/export").expect(200).bytes();
        try (Api other = new Api()) {
            other.send(other.to("/api/import")
                            .header("Content-Type", "application/zip")
                            .POST(BodyPublishers.ofByteArray(archive)))
                    .expect(200);
            assertEquals(
                    RowCounts.of(api.database.database(), notebook(api)),
                    RowCounts.of(other.database.database(), notebook(other)));
        }
        assertEquals("awake\n", new String(api.get("/healthz").bytes(), StandardCharsets.UTF_8));
    }

    private static UUID notebook(Api api) {
        return UUID.fromString(
                api.get("/api/me").expect(200).json().at("/notebook/id").asText());
    }
}
