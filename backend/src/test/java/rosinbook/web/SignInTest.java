package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rosinbook.access.Access;
import rosinbook.access.Passphrase;
import rosinbook.store.Database;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.store.DatabaseSheetStore;
import rosinbook.testing.TestDatabase;

/** A notebook that is reached from elsewhere. */
class SignInTest {
    private static final String PASSPHRASE = "four strings and a bow";

    private static final String METRICS_KEY = "a key of twenty-four letters or more";

    private final SettableClock clock = new SettableClock("2026-11-12T20:00:00Z");
    private final HttpClient client = HttpClient.newHttpClient();
    private TestDatabase held;
    private Database database;
    private Server server;

    @BeforeEach
    void open() {
        held = TestDatabase.fresh();
        database = held.database();
        DatabaseSheetStore.onlyNotebook(database, clock.instant());
        setPassphrase(PASSPHRASE);
        server = Server.start(
                database,
                new Listening("127.0.0.1", 0, Optional.of(URI.create("http://127.0.0.1"))),
                clock,
                new Housekeeping(Optional.of(new MetricsKey(METRICS_KEY)), Optional.empty()));
    }

    private void setPassphrase(String text) {
        new Access(new DatabaseAccessStore(database), clock, new SecureRandom()).setPassphrase(new Passphrase(text));
    }

    @AfterEach
    void close() {
        server.close();
        held.close();
    }

    private HttpResponse<String> send(String method, String path, String cookie, String form)
            throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(
                        URI.create("http://127.0.0.1:" + server.javalin().port() + path))
                .header("Cookie", cookie)
                .header("Content-Type", "application/x-www-form-urlencoded")
                .method(method, HttpRequest.BodyPublishers.ofString(form));
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    private HttpResponse<String> get(String path, String cookie) throws IOException, InterruptedException {
        return send("GET", path, cookie, "");
    }

    private String signIn(String passphrase) throws IOException, InterruptedException {
        HttpResponse<String> answer =
                send("POST", "/sign-in", "", "name=owner&passphrase=" + passphrase.replace(' ', '+'));
        return answer.headers().firstValue("Set-Cookie").orElse("");
    }

    @Test
    void a_stranger_reaches_nothing_but_the_door_and_shares() throws Exception {
        HttpResponse<String> refused = get("/api/rigs", "");
        assertEquals(401, refused.statusCode());
        // RFC 9110, section 15.5.2: a 401 says how one authenticates.
        assertEquals(
                List.of("Cookie realm=\"Rosinbook\", form-action=\"/sign-in\", cookie-name=\"rosinbook-session\""),
                refused.headers().allValues("WWW-Authenticate"));
        assertEquals(
                401,
                get("/api/export", "rosinbook-session=AAAAAAAAAAAAAAAAAAAAAA").statusCode());
        HttpResponse<String> page = get("/rigs", "");
        assertEquals(302, page.statusCode());
        assertEquals(
                "/sign-in?to=%2Frigs", page.headers().firstValue("Location").orElse(""));
        assertEquals(200, get("/sign-in", "").statusCode());
        assertEquals(404, get("/s/AAAAAAAAAAAAAAAAAAAAAA", "").statusCode());
    }

    @Test
    void whoever_signs_in_goes_on_to_the_page_they_asked_for() throws Exception {
        String asked = "/compare/rigs/a-b?was=1&now=2";
        String door = get(asked, "").headers().firstValue("Location").orElseThrow();
        assertEquals("/sign-in?to=%2Fcompare%2Frigs%2Fa-b%3Fwas%3D1%26now%3D2", door);
        String field = "value=\"/compare/rigs/a-b?was=1&amp;now=2\"";
        assertTrue(get(door, "").body().contains(field), door);
        String form = "name=owner&to=" + URLEncoder.encode(asked, StandardCharsets.UTF_8) + "&passphrase=";
        HttpResponse<String> wrong = send("POST", "/sign-in", "", form + "a+guess+of+somebodys");
        assertTrue(wrong.body().contains(field), wrong.body());
        HttpResponse<String> right = send("POST", "/sign-in", "", form + PASSPHRASE.replace(' ', '+'));
        assertEquals(asked, right.headers().firstValue("Location").orElse(""));
    }

    /** OWASP ASVS 5.0, 3.7.2: nobody is sent on to another site. */
    @Test
    void nobody_is_sent_on_to_what_is_no_page_of_ours() throws Exception {
        for (String asked : new String[] {
            "",
            "https://evil.example/",
            "//evil.example",
            "/\\evil.example",
            "///rigs",
            "/ /rigs",
            "rigs",
            "/rigs/",
            "/rigs\r\nX: y",
            "/rigs?x\r\nX: y",
            "/rigs?https://evil.example",
            "/rigs#x",
            "/api/export",
            "/sign-out",
            "/app.js",
            "/join/AAAAAAAAAAAAAAAAAAAAAA",
            "javascript:alert(1)"
        }) {
            assertEquals("/", AskedPage.of(asked), asked);
        }
        String form = "name=owner&to=%2F%2Fevil.example&passphrase=" + PASSPHRASE.replace(' ', '+');
        HttpResponse<String> answer = send("POST", "/sign-in", "", form);
        assertEquals(303, answer.statusCode(), answer.body());
        assertEquals("/", answer.headers().firstValue("Location").orElse(""));
        String page = get("/sign-in?to=%2F%2Fevil.example", "").body();
        assertTrue(page.contains("name=\"to\" value=\"/\""), page);
    }

    @Test
    void an_address_too_long_to_be_carried_along_is_forgotten() throws Exception {
        String longest = "/rigs?" + "x".repeat(494);
        assertEquals(longest, AskedPage.of(longest));
        assertEquals("/", AskedPage.of(longest + "x"));
        assertEquals(
                "/sign-in",
                get(longest + "x", "").headers().firstValue("Location").orElse(""));
    }

    @Test
    void the_passphrase_opens_a_session_that_scripts_cannot_read_and_that_can_be_ended() throws Exception {
        String cookie = signIn(PASSPHRASE);
        assertTrue(cookie.contains("HttpOnly"), cookie);
        assertTrue(cookie.contains("SameSite=Lax"), cookie);
        String session = cookie.substring(0, cookie.indexOf(';'));
        assertEquals(200, get("/api/rigs", session).statusCode());
        send("POST", "/sign-out", session, "");
        assertEquals(401, get("/api/rigs", session).statusCode());
    }

    private HttpResponse<String> getWithKey(String path, String authorization)
            throws IOException, InterruptedException {
        return getWithKey("127.0.0.1", path, authorization);
    }

    private HttpResponse<String> getWithKey(String host, String path, String authorization)
            throws IOException, InterruptedException {
        URI uri = URI.create("http://127.0.0.1:" + server.javalin().port() + path);
        return client.send(
                HttpRequest.newBuilder(uri)
                        .header("Host", host)
                        .header("Authorization", authorization)
                        .build(),
                HttpResponse.BodyHandlers.ofString());
    }

    /** Beside the server it is called by another name than people use. */
    @Test
    void a_collector_with_the_key_reads_the_metrics_under_whatever_name_it_calls_the_server() throws Exception {
        String host = "rosinbook:8017";
        for (String scheme : new String[] {"Bearer", "bearer", "BEARER"}) {
            HttpResponse<String> read = getWithKey(host, "/api/metrics", scheme + " " + METRICS_KEY);
            assertEquals(200, read.statusCode(), read.body());
        }
        assertWrongHost(getWithKey(host, "/api/metrics", "Bearer " + METRICS_KEY + "x"));
        assertWrongHost(getWithKey(host, "/api/rigs", "Bearer " + METRICS_KEY));
        assertWrongHost(getWithKey(host, "/", "Bearer " + METRICS_KEY));
    }

    private static void assertWrongHost(HttpResponse<String> answer) {
        assertEquals(403, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains("/problems/wrong-host"), answer.body());
    }

    @Test
    void metrics_are_read_by_whoever_is_signed_in_or_brings_their_key_and_nobody_else() throws Exception {
        assertEquals(401, get("/api/metrics", "").statusCode());
        String cookie = signIn(PASSPHRASE);
        String session = cookie.substring(0, cookie.indexOf(';'));
        assertEquals(200, get("/api/metrics", session).statusCode());
        HttpResponse<String> read = getWithKey("/api/metrics", "Bearer " + METRICS_KEY);
        assertEquals(200, read.statusCode());
        assertTrue(read.body().contains("rosinbook_database_up 1"), read.body());
        for (String wrong : new String[] {
            "Bearer ",
            "Bearer " + METRICS_KEY + "x",
            "Bearer " + METRICS_KEY.substring(1),
            METRICS_KEY,
            "Basic " + METRICS_KEY
        }) {
            assertEquals(401, getWithKey("/api/metrics", wrong).statusCode(), wrong);
        }
    }

    @Test
    void the_key_for_the_metrics_opens_nothing_else() throws Exception {
        for (String path :
                new String[] {"/api/rigs", "/api/export", "/api/metrics/", "/api/metrics/x", "/API/metrics"}) {
            int status = getWithKey(path, "Bearer " + METRICS_KEY).statusCode();
            assertTrue(status == 401 || status == 302, path + ": " + status);
        }
        assertEquals(302, getWithKey("/", "Bearer " + METRICS_KEY).statusCode());
    }

    @Test
    void changing_the_passphrase_ends_every_session() throws Exception {
        String cookie = signIn(PASSPHRASE);
        String session = cookie.substring(0, cookie.indexOf(';'));
        setPassphrase("another one altogether");
        assertEquals(401, get("/api/rigs", session).statusCode());
        assertEquals("", signIn(PASSPHRASE));
        assertFalse(signIn("another one altogether").isEmpty());
    }

    @Test
    void guessing_is_slowed_down_even_for_the_right_passphrase() throws Exception {
        for (int i = 0; i < 5; i++) {
            assertEquals("", signIn("wrong guess number " + i));
        }
        HttpResponse<String> answer =
                send("POST", "/sign-in", "", "name=owner&passphrase=" + PASSPHRASE.replace(' ', '+'));
        assertEquals(429, answer.statusCode());
        assertTrue(answer.headers().firstValue("Retry-After").isPresent());
        assertTrue(answer.body().contains("Too many wrong tries"));
    }

    @Test
    void without_a_passphrase_it_does_not_listen_elsewhere() {
        try (TestDatabase bare = TestDatabase.fresh()) {
            Listening elsewhere = new Listening("127.0.0.1", 0, Optional.of(URI.create("https://band.example")));
            var problem =
                    assertThrows(IllegalArgumentException.class, () -> Server.start(bare.database(), elsewhere, clock));
            assertTrue(problem.getMessage().contains("rosinbook passphrase"), problem.getMessage());
        }
    }

    @Test
    void listening_elsewhere_needs_to_know_its_public_address() {
        var problem =
                assertThrows(IllegalArgumentException.class, () -> new Listening("0.0.0.0", 8017, Optional.empty()));
        assertTrue(problem.getMessage().contains("--public-address"), problem.getMessage());
    }

    @Test
    void a_short_passphrase_is_refused() {
        var problem = assertThrows(IllegalArgumentException.class, () -> new Passphrase("fourteen chars"));
        assertTrue(problem.getMessage().contains("15 to 200"), problem.getMessage());
        assertEquals("Passphrase[…]", new Passphrase(PASSPHRASE).toString());
    }
}
