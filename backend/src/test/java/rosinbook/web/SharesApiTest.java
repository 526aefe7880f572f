package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Links that open exactly what they name. */
class SharesApiTest {
    private static final String NO_TOKEN = "AAAAAAAAAAAAAAAAAAAAAA";

    private final Api api = new Api();
    private Gear gear;
    private String piece;
    private String start;
    private String recipe;
    private String rig;
    private String set;

    @BeforeEach
    void planASet() {
        gear = new Gear(api);
        piece = api.create("pieces", "{'title':'Copper Weather','tempoBpm':120,'composer':'Tilde'}")
                .id();
        start = api.create("recipes", gear.start(80)).id();
        recipe = api.create("recipes", gear.following("Copper, drive", piece, start, 40))
                .id();
        rig = api.create("rigs", gear.rig(20, 21)).id();
        set = api.create("setlists", set("Tannery, second night")).id();
    }

    private String set(String title) {
        return "{'title':'" + title + "','date':'2026-11-12','place':'Old Tannery','rig':{'id':'" + rig
                + "'},'items':{'a':{'order':1,'piece':'" + piece + "','recipe':{'id':'" + recipe
                + "'},'note':'Lights down'}}}";
    }

    @AfterEach
    void stop() {
        api.close();
    }

    private JsonNode share(String kind, String id, String more) {
        return api.post("/api/shares", "{'kind':'" + kind + "','id':'" + id + "','name':'For Jonas'" + more + "}")
                .expect(201)
                .json();
    }

    private static String path(JsonNode share) {
        return "/s/" + share.path("token").asText();
    }

    private JsonNode listed(JsonNode share) {
        return api.get("/api/shares").items().stream()
                .filter(entry -> entry.path("id").equals(share.path("id")))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_link_shows_the_set_with_resolved_sounds_and_is_told_once() {
        JsonNode share = share("setlists", set, ",'revision':1");
        assertEquals(api.address + path(share), share.path("url").asText());
        assertTrue(share.path("token").asText().matches("[A-Za-z0-9_-]{22}"), "128 bits as base64url");
        JsonNode shown = api.get(path(share) + "/data").expect(200).json();
        assertEquals("Tannery, second night", shown.path("title").asText());
        assertFalse(shown.toString().contains("For Jonas"), "what the player calls a share is theirs alone");
        assertEquals(1, shown.path("revision").asInt());
        JsonNode item = shown.at("/setlist/items/0");
        assertEquals("Copper Weather", item.path("title").asText());
        assertEquals("Lights down", item.path("note").asText());
        assertEquals("Everyday", item.at("/recipe/startingPoint").asText());
        assertEquals("80", line(item, "/straight/parameters/level").path("text").asText());
        assertEquals(
                "start", line(item, "/straight/parameters/level").path("from").asText());
        assertEquals(
                "40", line(item, "/voices/warm/parameters/level").path("text").asText());
        assertEquals(
                "piece",
                line(item, "/voices/warm/parameters/level").path("from").asText());
        assertEquals(20, shown.at("/setlist/rig/strings/0/sensitivity").asInt());
        assertEquals("E5", shown.at("/setlist/rig/strings/0/note").asText());
        String list = api.get("/api/shares").text();
        assertFalse(list.contains(share.path("token").asText()), "the list cannot tell the token again");
    }

    private static JsonNode line(JsonNode item, String pointer) {
        for (JsonNode line : item.at("/recipe/lines")) {
            if (line.path("pointer").asText().equals(pointer)) {
                return line;
            }
        }
        throw new AssertionError("no line for " + pointer + " in " + item);
    }

    @Test
    void a_long_list_asks_the_database_no_more_often_than_a_short_one() {
        share("rigs", rig, "");
        int asked = askedForTheList();
        for (int i = 0; i < 5; i++) {
            share("rigs", api.create("rigs", gear.rig(20, 20)).id(), "");
        }
        assertEquals(asked, askedForTheList());
    }

    /** How often; 0 where it is not counted. */
    private int askedForTheList() {
        try (AskedOfH2 listening = new AskedOfH2();
                Api again = new Api(api.database.again(), Patience.USUAL)) {
            again.get("/api/shares").expect(200);
            return listening.selects().size();
        }
    }

    @Test
    void opening_is_noted() {
        JsonNode share = share("rigs", rig, "");
        assertEquals(0, listed(share).path("opened").asInt());
        assertFalse(listed(share).has("lastOpenedAt"));
        api.clock.pass(Duration.ofHours(1));
        api.get(path(share)).expect(200);
        assertEquals(1, listed(share).path("opened").asInt());
        assertEquals(
                "2026-11-12T21:00:00.123456Z",
                listed(share).path("lastOpenedAt").asText());
        assertEquals("open", listed(share).path("state").asText());
    }

    private void changeEverything() {
        api.save("setlists", set, 1, set("Another evening").replace("Lights down", "Lights up"));
        api.save("pieces", piece, 1, "{'title':'Renamed'}");
        api.save("rigs", rig, 1, gear.rig(55, 55));
        api.save(
                "instruments",
                gear.violin,
                1,
                Gear.VIOLIN.replace("Green", "Red").replace("E5", "D5"));
        api.save(
                "synths",
                gear.synth,
                1,
                Gear.SYNTH.replace("Stage synth", "Other").replace("'Level'", "'Loudness'"));
        api.save("recipes", start, 1, gear.start(10));
        api.save("recipes", recipe, 2, gear.following("Quiet", piece, start, 5));
    }

    @Test
    void a_link_to_exact_revisions_stays_as_it_was_although_everything_moved_on() {
        List<JsonNode> shares = List.of(
                share("setlists", set, ",'revision':1"),
                share("rigs", rig, ",'revision':1"),
                share("recipes", recipe, ",'revision':1"));
        List<String> before = shares.stream()
                .map(share -> api.get(path(share)).expect(200).text())
                .toList();
        List<JsonNode> data = shares.stream()
                .map(share -> api.get(path(share) + "/data").json())
                .toList();
        changeEverything();
        assertEquals(
                before,
                shares.stream()
                        .map(share -> api.get(path(share)).expect(200).text())
                        .toList());
        assertEquals(
                data,
                shares.stream()
                        .map(share -> api.get(path(share) + "/data").json())
                        .toList());
    }

    @Test
    void a_link_that_is_kept_up_to_date_moves_on() {
        JsonNode share = share("setlists", set, "");
        api.get(path(share)).expect(200);
        changeEverything();
        String page = api.get(path(share)).expect(200).text();
        for (String now : List.of("Another evening", "Renamed", "Lights up", "Quiet", "Loudness", "55")) {
            assertTrue(page.contains(now), now);
        }
        assertFalse(page.contains("Copper Weather"));
        assertTrue(api.get(path(share) + "/data").json().path("keptUpToDate").asBoolean());
    }

    @Test
    void asking_whether_a_link_opens_is_not_noted_as_opening_it() {
        JsonNode share = share("rigs", rig, "");
        for (String address : new String[] {path(share), path(share) + "/data"}) {
            api.send(api.to(address).method("HEAD", BodyPublishers.noBody())).expect(200);
        }
        api.get(path(share)).expect(200);
        assertEquals(1, listed(share).path("opened").asInt());
    }

    @Test
    void a_link_opens_until_it_expires_and_not_a_microsecond_longer() {
        JsonNode share = share("rigs", rig, ",'expiresAt':'2026-11-12T21:00:00.123456Z'");
        api.clock.pass(Duration.ofHours(1).minusNanos(1_000));
        api.get(path(share)).expect(200);
        api.clock.pass(Duration.ofNanos(1_000));
        api.get(path(share)).expect(404);
        api.get(path(share) + "/data").problem(404, "no-such-share");
        assertEquals("expired", listed(share).path("state").asText());
        assertEquals(1, listed(share).path("opened").asInt());
    }

    @Test
    void a_closed_link_stays_closed() {
        JsonNode share = share("rigs", rig, "");
        String address = "/api/shares/" + share.path("id").asText();
        assertEquals(0, api.delete(address).expect(204).bytes().length);
        api.get(path(share)).expect(404);
        assertEquals("revoked", listed(share).path("state").asText());
        String closedAt = listed(share).path("revokedAt").asText();
        api.clock.pass(Duration.ofHours(1));
        api.delete(address).expect(204);
        assertEquals(closedAt, listed(share).path("revokedAt").asText(), "closed once");
    }

    @Test
    void wrong_expired_and_closed_links_cannot_be_told_apart() {
        JsonNode closed = share("rigs", rig, "");
        api.delete("/api/shares/" + closed.path("id").asText()).expect(204);
        JsonNode expired = share("rigs", rig, ",'expiresAt':'2026-11-12T20:30:00Z'");
        api.clock.pass(Duration.ofHours(1));
        for (String rest : List.of("", "/data")) {
            Answer wrong = api.get("/s/" + NO_TOKEN + rest);
            for (String token : List.of(path(closed), path(expired), "/s/x", "/s/" + NO_TOKEN + "A", "/s/%00")) {
                Answer answer = api.get(token + rest);
                if (token.equals("/s/%00") && answer.status() == 400) {
                    continue; // refused before it reaches us
                }
                assertEquals(404, answer.status());
                assertEquals(wrong.likeOthers(), answer.likeOthers());
            }
        }
    }

    @Test
    void a_shared_page_is_not_sent_on_not_kept_and_not_found_by_search_engines() {
        // W3C TAG finding "Good Practices for Capability URLs".
        JsonNode share = share("rigs", rig, "");
        for (String address : List.of(path(share), path(share) + "/data", "/s/" + NO_TOKEN)) {
            Answer answer = api.get(address);
            assertEquals("no-referrer", answer.header("Referrer-Policy"));
            assertEquals(1, answer.headers().get("referrer-policy").size());
            assertEquals("noindex, nofollow", answer.header("X-Robots-Tag"));
            assertTrue(answer.header("Cache-Control").contains("no-store"));
            assertTrue(answer.header("Cache-Control").contains("private"));
            assertEquals("", answer.header("Set-Cookie"));
        }
        String page = api.get(path(share)).text();
        assertTrue(page.contains("<meta name=\"robots\" content=\"noindex, nofollow\">"), page);
        assertFalse(page.contains("<script"), page);
        assertFalse(page.contains("<form"), page);
        assertFalse(page.contains("href=\"/api"), page);
    }

    @Test
    void nothing_else_is_reached_through_a_link() {
        String secret = api.create("pieces", "{'title':'Unshared piece'}").id();
        JsonNode share = share("setlists", set, ",'revision':1");
        for (String beyond : List.of(
                "/data/../../../api/pieces",
                "/" + secret,
                "/api/pieces",
                "/revisions",
                "/data/x",
                "?revision=2",
                "/data?id=" + secret)) {
            Answer answer = api.get(path(share) + beyond);
            assertFalse(answer.text().contains("Unshared"), beyond);
            assertFalse(answer.text().contains(secret), beyond);
            assertTrue(answer.status() == 404 || beyond.contains("?"), beyond + ": " + answer.status());
        }
        String data = api.get(path(share) + "/data").text();
        for (String inner : List.of(set, piece, recipe, start, rig, gear.violin, gear.synth)) {
            assertFalse(data.contains(inner), "ids of the notebook stay inside");
        }
        assertFalse(data.contains("Mira"), "who saved it stays inside");
        assertFalse(data.contains("for a test"), "why it was saved stays inside");
    }

    @Test
    void the_database_alone_opens_no_link() throws Exception {
        Set<String> tokens = new HashSet<>();
        for (int i = 0; i < 20; i++) {
            tokens.add(share("rigs", rig, "").path("token").asText());
        }
        assertEquals(20, tokens.size());
        List<String> stored = everyStoredText();
        assertTrue(stored.stream().anyMatch(text -> text.contains("Copper Weather")), "the tables were read");
        for (String token : tokens) {
            assertTrue(stored.stream().noneMatch(text -> text.contains(token)));
        }
        for (String text : stored) {
            if (text.matches("[0-9a-f]{64}")) {
                api.get("/s/" + text).expect(404);
                api.get("/s/" + text.substring(0, 22)).expect(404);
            }
        }
    }

    private List<String> everyStoredText() throws Exception {
        List<String> texts = new ArrayList<>();
        try (var connection = api.database.connect();
                var tables = connection
                        .createStatement()
                        .executeQuery(
                                "SELECT table_name FROM information_schema.tables WHERE table_schema IN ('PUBLIC', 'public')")) {
            while (tables.next()) {
                try (var rows =
                        connection.createStatement().executeQuery("SELECT * FROM \"" + tables.getString(1) + "\"")) {
                    while (rows.next()) {
                        for (int column = 1; column <= rows.getMetaData().getColumnCount(); column++) {
                            texts.add(String.valueOf(rows.getObject(column)));
                        }
                    }
                }
            }
        }
        return texts;
    }

    @Test
    void the_square_code_is_read_back_by_a_decoder() throws Exception {
        // ISO/IEC 18004, read by ZXing's decoder from the drawn picture.
        String url = share("rigs", rig, "").path("url").asText();
        Answer code = api.get("/api/shares/qr?url=" + Api.encoded(url)).expect(200);
        assertEquals("image/svg+xml", code.header("Content-Type"));
        assertEquals(url, SquareCodes.read(code.text()));
    }

    @Test
    void only_our_own_links_are_made_into_codes() {
        String token = share("rigs", rig, "").path("token").asText();
        for (String url : List.of(
                "http://evil.example/s/" + token,
                api.address + "/",
                api.address + "/s/" + token + "/../../api",
                api.address + "/s/",
                api.address + "@evil.example/s/" + token,
                api.address + "/s/<script>")) {
            api.get("/api/shares/qr?url=" + Api.encoded(url)).problem(400, "bad-request");
        }
    }

    @Test
    void the_same_as_one_file_needs_no_network_and_runs_nothing() throws Exception {
        String styles;
        try (var css = SharesApiTest.class.getResourceAsStream("/frontend/styles/share.css")) {
            styles = new String(css.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        }
        for (String address : List.of("/api/setlists/" + set, "/api/rigs/" + rig, "/api/recipes/" + recipe)) {
            Answer answer = api.get(address + "/file?revision=1").expect(200);
            assertEquals(
                    "text/html;charset=utf-8", answer.header("Content-Type").replace(" ", ""));
            assertTrue(answer.header("Content-Disposition").matches("attachment; filename=\"[A-Za-z0-9-]+\\.html\""));
            String file = answer.text();
            for (String outward :
                    List.of("http:", "https:", "src=", "href=", "url(", "@import", "<script", "<link", "<iframe")) {
                assertFalse(file.contains(outward), outward + " in " + file);
            }
            assertFalse(file.matches("(?s).*<[^>]+\\son[a-z]+=.*"), "no handlers");
            assertTrue(file.contains("<style>" + styles + "</style>"), "styles as they are, not escaped");
        }
        assertTrue(api.get("/api/setlists/" + set + "/file").text().contains("Copper Weather"));
        assertNotEquals(
                api.get("/api/rigs/" + rig + "/file").text(),
                api.get("/api/recipes/" + recipe + "/file").text());
    }

    @Test
    void hostile_words_are_shown_as_words() {
        String hostile =
                "<script>alert(1)</script><img src=x onerror=alert(1)>\\u0022\\u0027&amp;\\u202e\\ud83c\\udfbb";
        String plain = Api.json("['" + hostile + "']").path(0).asText();
        String escaped = plain.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#x27;");
        String evilPiece = api.create("pieces", "{'title':'" + hostile + "','composer':'" + hostile + "'}")
                .id();
        String evilRecipe = api.create(
                        "recipes",
                        "{'title':'" + hostile + "','settings':{'slot':'" + hostile.substring(0, 25)
                                + "','notes':'" + hostile + "','voices':{'a':{'name':'" + hostile
                                + "','parameters':{'x':'" + hostile + "'}}},"
                                + "'effects':{'b':{'type':'" + hostile + "'}}}}")
                .id();
        String evilRig = api.create("rigs", gear.rig(1, 1).replace("'date'", "'notes':'" + hostile + "','date'"))
                .id();
        String evilSet = api.create(
                        "setlists",
                        "{'title':'" + hostile + "','date':'2026-11-12','place':'" + hostile + "','notes':'" + hostile
                                + "','rig':{'id':'" + evilRig + "'},'items':{'a':{'order':1,'piece':'" + evilPiece
                                + "','note':'" + hostile
                                + "','recipe':{'id':'" + evilRecipe + "'}}}}")
                .id();
        JsonNode share = share("setlists", evilSet, "");
        for (String html : List.of(
                api.get(path(share)).text(),
                api.get("/api/setlists/" + evilSet + "/file").text())) {
            assertFalse(html.contains("<script"), html);
            assertFalse(html.contains("<img"), html);
            assertTrue(html.contains("<title>" + escaped + "</title>"), html);
            assertTrue(html.contains("<h1>" + escaped + "</h1>"), html);
        }
        assertEquals(plain, api.get(path(share) + "/data").json().path("title").asText());
    }
}
