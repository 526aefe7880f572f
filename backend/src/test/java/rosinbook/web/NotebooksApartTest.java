package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Nobody can tell from an answer whether another notebook's thing exists. */
class NotebooksApartTest {
    private static final Pattern ID =
            Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}|[0-9a-f]{64}");

    /** What is nobody's secret: sessions are one's own, and every player sees who plays here. */
    private static final Set<String> ABOUT_PLAYERS = Set.of(
            "DELETE /api/players/{player}",
            "POST /api/players/{player}/invitation",
            "DELETE /api/me/sessions/{session}");

    private final Band band;
    private final Random random = new Random(20261112);

    NotebooksApartTest() throws IOException {
        band = new Band();
    }

    @AfterEach
    void close() throws IOException {
        band.close();
    }

    private String never(String like) {
        if (like.length() == 64) {
            return String.format("%016x", random.nextLong()).repeat(4);
        }
        byte[] seed = new byte[16];
        random.nextBytes(seed);
        return UUID.nameUUIDFromBytes(seed).toString();
    }

    /** The same request about things that never were, each id replaced by one of its own. */
    private Samples.Sample aboutNothing(Samples.Sample sample) {
        Map<String, String> instead = new HashMap<>();
        byte[] body = sample.type().equals("application/json")
                ? replaced(new String(sample.body(), StandardCharsets.UTF_8), instead)
                        .getBytes(StandardCharsets.UTF_8)
                : sample.body();
        String path = replaced(sample.path(), instead);
        return new Samples.Sample(sample.method(), path, sample.type(), body, sample.ifMatch(), sample.success());
    }

    private String replaced(String text, Map<String, String> instead) {
        Matcher ids = ID.matcher(text);
        return ids.replaceAll(id -> instead.computeIfAbsent(id.group(), this::never));
    }

    private static boolean namesSomething(Samples.Sample sample) {
        return ID.matcher(sample.path() + new String(sample.body(), StandardCharsets.ISO_8859_1))
                .find();
    }

    @Test
    void every_request_about_another_notebooks_thing_is_answered_like_one_about_nothing() {
        Samples samples = new Samples(band);
        Set<String> tried = new TreeSet<>();
        for (String operation : Description.operations()) {
            Samples.Sample hers = samples.of(operation, band.ada);
            if (ABOUT_PLAYERS.contains(operation)
                    || !namesSomething(hers)
                    || !hers.path().startsWith("/api/")
                    || hers.type().equals("application/zip")) {
                continue;
            }
            Answer asked = hers.sendAs(band.as(band.oskar));
            Answer nothing = aboutNothing(hers).sendAs(band.as(band.oskar));
            assertTrue(asked.status() >= 400, operation + ": " + asked.text());
            Likeness.assertAlike(asked, nothing, operation);
            tried.add(operation);
        }
        Set<String> withAnId = new TreeSet<>(Description.operations());
        withAnId.removeIf(operation -> !operation.contains("{id}") && !operation.contains("{upload}"));
        withAnId.removeAll(tried);
        assertEquals(Set.of(), withAnId, "every route with an id is tried");
        assertTrue(tried.contains("POST /api/shares") && tried.contains("POST /api/bench/takes"), "" + tried);
        assertTrue(tried.contains("POST /api/{kind}") && tried.contains("GET /api/setlists/compare"), "" + tried);
    }

    @Test
    void the_owner_gets_through_with_the_same_requests() {
        Samples samples = new Samples(band);
        for (String operation : List.of("POST /api/shares", "POST /api/bench/takes", "POST /api/{kind}")) {
            Samples.Sample hers = samples.of(operation, band.ada);
            hers.sendAs(band.as(band.ada)).expect(hers.success());
        }
    }

    @Test
    void an_id_that_is_used_in_another_notebook_is_free_in_ones_own() {
        String id = UUID.randomUUID().toString();
        band.as(band.ada)
                .post("/api/pieces", "{'id':'" + id + "','content':{'title':'Hers'}}")
                .expect(201);
        Answer used = band.as(band.oskar).post("/api/pieces", "{'id':'" + id + "','content':{'title':'His'}}");
        Answer free =
                band.as(band.oskar).post("/api/pieces", "{'id':'" + UUID.randomUUID() + "','content':{'title':'His'}}");
        Likeness.assertAlike(used.expect(201), free, "POST /api/pieces");
        band.as(band.oskar)
                .with("If-Match", "\"r1\"")
                .put("/api/pieces/" + id, "{'content':{'title':'His, later'}}")
                .expect(200);
        Answer hers = band.as(band.ada).get("/api/pieces/" + id).expect(200);
        assertEquals("Hers", hers.json().path("title").asText());
        assertEquals(1, hers.revision());
        // The same id may even be another kind of thing there.
        band.as(band.lena)
                .post("/api/recipes", "{'id':'" + id + "','content':{'title':'Third','settings':{}}}")
                .expect(201);
    }

    @Test
    void lists_searches_and_counts_tell_of_ones_own_notebook_alone() {
        List<String> addresses = List.of(
                "tonight", "search?q=e", "styles", "shares", "pieces", "rigs", "recipes", "setlists", "log", "takes");
        List<Answer> before = new ArrayList<>();
        addresses.forEach(
                address -> before.add(band.as(band.oskar).get("/api/" + address).expect(200)));
        band.as(band.ada).post("/api/example", "{}").expect(201);
        String set =
                band.as(band.ada).get("/api/setlists").items().get(0).path("id").asText();
        band.as(band.ada)
                .post("/api/shares", "{'kind':'setlists','id':'" + set + "'}")
                .expect(201);
        for (int i = 0; i < addresses.size(); i++) {
            Answer after = band.as(band.oskar).get("/api/" + addresses.get(i));
            Likeness.assertAlike(before.get(i), after, addresses.get(i));
            assertNotEquals(
                    before.get(i).text(),
                    band.as(band.ada).get("/api/" + addresses.get(i)).text(),
                    addresses.get(i) + " is not empty in every notebook");
        }
    }

    @Test
    void the_same_archive_is_read_into_two_notebooks_which_then_go_their_own_ways() {
        band.as(band.ada).post("/api/example", "{}").expect(201);
        byte[] zip = band.as(band.ada).get("/api/export").expect(200).bytes();
        Answer his = band.as(band.oskar).with("Content-Type", "application/zip").send("POST", "/api/import", zip);
        Answer theirs =
                band.as(band.lena).with("Content-Type", "application/zip").send("POST", "/api/import", zip);
        assertTrue(his.expect(200).json().path("added").asInt() > 30);
        Likeness.assertAlike(his, theirs, "POST /api/import");
        for (String kind : List.of("pieces", "rigs", "setlists", "takes")) {
            assertEquals(
                    band.as(band.ada).get("/api/" + kind).text(),
                    band.as(band.oskar).get("/api/" + kind).text());
        }
        String piece =
                band.as(band.oskar).get("/api/pieces").items().get(0).path("id").asText();
        String before = band.as(band.ada).get("/api/pieces/" + piece).text();
        int revision = band.as(band.oskar).get("/api/pieces/" + piece).revision();
        band.as(band.oskar)
                .with("If-Match", "\"r" + revision + "\"")
                .put("/api/pieces/" + piece, "{'content':{'title':'His own now'}}")
                .expect(200);
        assertEquals(before, band.as(band.ada).get("/api/pieces/" + piece).text());
        assertEquals(
                before,
                band.as(band.lena)
                        .in(band.lena.notebook)
                        .get("/api/pieces/" + piece)
                        .text());
    }

    @Test
    void a_reader_sees_what_was_opened_to_them_and_a_share_shows_its_own_notebooks_thing() {
        String id = UUID.randomUUID().toString();
        for (Band.Player player : List.of(band.ada, band.oskar)) {
            band.as(player)
                    .post(
                            "/api/recipes",
                            "{'id':'" + id + "','content':{'title':'By " + player.name + "','settings':{}}}")
                    .expect(201);
        }
        assertEquals(
                "By Ada",
                band.as(band.lena)
                        .in(band.ada.notebook)
                        .get("/api/recipes/" + id)
                        .json()
                        .path("title")
                        .asText());
        for (Band.Player player : List.of(band.ada, band.oskar)) {
            String token = band.as(player)
                    .post("/api/shares", "{'kind':'recipes','id':'" + id + "'}")
                    .expect(201)
                    .json()
                    .path("token")
                    .asText();
            assertTrue(band.stranger().get("/s/" + token).expect(200).text().contains("By " + player.name));
        }
    }
}
