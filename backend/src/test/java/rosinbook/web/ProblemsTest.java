package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rosinbook.notebook.ContentJson;
import rosinbook.store.Damage;

/** Whatever is not as it should be is answered with problem details (RFC 9457) that say what to do. */
class ProblemsTest {
    private final Api api = new Api();

    @AfterEach
    void stop() {
        api.close();
    }

    @Test
    void what_is_not_there_is_404() {
        String nobody = UUID.randomUUID().toString();
        String piece = api.create("pieces", "{'title':'One'}").id();
        api.get("/api/pieces/" + nobody).problem(404, "no-such-sheet");
        api.get("/api/rigs/" + piece).problem(404, "no-such-sheet");
        api.get("/api/pieces/not-an-id").problem(404, "no-such-sheet");
        api.get("/api/pieces/" + piece + "/revisions/2").problem(404, "no-such-revision");
        api.get("/api/unicorns").problem(404, "no-such-kind");
        api.post("/api/unicorns", "{'content':{}}").problem(404, "no-such-kind");
        api.put("/api/pieces/" + nobody, 1, "{'content':{'title':'One'}}").problem(404, "no-such-sheet");
        api.get("/api/recipes/" + nobody + "/resolved").problem(404, "no-such-sheet");
        api.get("/api/recipes/" + nobody + "/followers").problem(404, "no-such-sheet");
        api.get("/api/rigs/" + nobody + "/strings").problem(404, "no-such-sheet");
        api.get("/api/pieces/" + nobody + "/used-by").problem(404, "no-such-sheet");
        api.get("/api/pieces/" + nobody + "/revisions").problem(404, "no-such-sheet");
        api.get("/api/setlists/compare?was=" + nobody + "&now=" + nobody).problem(404, "no-such-sheet");
        api.get("/api/rigs/" + nobody + "/file").problem(404, "no-such-sheet");
        api.get("/api/pieces/" + piece + "/file").problem(404, "no-such-page");
        api.delete("/api/shares/" + nobody).problem(404, "no-such-share");
    }

    /** RFC 9110, section 13.1.1: the precondition is false. */
    @Test
    void a_revision_to_build_on_that_is_not_there_is_412_and_says_which_is() {
        String piece = "/api/pieces/" + api.create("pieces", "{'title':'One'}").id();
        String set = "/api/setlists/"
                + api.create("setlists", "{'title':'Kitchen','date':'2026-11-19','items':{}}")
                        .id();
        for (Answer refused : List.of(
                api.put(piece, 5, "{'content':{'title':'Two'}}"),
                api.post(piece + "/revisions/1/restore", 5, "{}"),
                api.post(set + "/played", 5, "{}"))) {
            refused.problem(412, "no-such-base");
            assertEquals("\"r1\"", refused.header("ETag"));
        }
        assertEquals(1, api.get(piece).revision());
    }

    /** RFC 9457, section 3.1.3: the title does not change from occurrence to occurrence. */
    @Test
    void the_title_of_a_type_is_the_same_wherever_it_is_answered() {
        String nobody = UUID.randomUUID().toString();
        Set<String> media = new TreeSet<>();
        for (String address : List.of(
                "/api/pieces", "/api/import", "/api/blobs", "/api/bench/levels", "/api/bench/takes", "/sign-in")) {
            media.add(title(api.send(
                            api.to(address).header("Content-Type", "text/plain").POST(BodyPublishers.ofString("x")))
                    .problem(415, "wrong-media-type")));
        }
        assertEquals(1, media.size(), media.toString());
        assertEquals(
                title(api.get("/api/bench/levels/no-id").problem(404, "no-such-upload")),
                title(api.get("/api/bench/levels/" + nobody).problem(404, "no-such-upload")));
        assertEquals(
                title(api.delete("/api/shares/" + nobody).problem(404, "no-such-share")),
                title(api.get("/s/AAAAAAAAAAAAAAAAAAAAAA/data").problem(404, "no-such-share")));
    }

    private static String title(JsonNode problem) {
        return problem.path("title").asText();
    }

    @Test
    void outside_the_api_problems_are_not_kept_by_anybody_either() {
        for (String path : List.of("/", "/app.js", "/s/AAAAAAAAAAAAAAAAAAAAAA", "/sign-in")) {
            Answer refused = api.send(api.to(path).header("Host", "evil.example"));
            refused.problem(403, "wrong-host");
            assertEquals("no-store", refused.header("Cache-Control"), path);
        }
        assertEquals("no-store", api.get("/nothing.js").expect(404).header("Cache-Control"));
    }

    private static final String BROWSER = "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8";

    @Test
    void who_opens_an_address_in_a_browser_reads_the_problem_on_a_page() {
        for (String path : List.of("/", "/pieces", "/nothing.js")) {
            Answer refused =
                    api.send(api.to(path).header("Host", "evil.example").header("Accept", BROWSER));
            assertEquals(403, refused.status());
            assertTrue(refused.header("Content-Type").startsWith("text/html"), path);
            assertTrue(refused.text().contains("<h2>This address is not ours</h2>"), refused.text());
            assertTrue(refused.text().contains("Open Rosinbook under the address it printed"), refused.text());
            assertTrue(refused.text().contains(refused.header("Request-Id")), refused.text());
            assertEquals("no-store", refused.header("Cache-Control"), path);
        }
    }

    @Test
    void programs_read_json_whatever_they_accept() {
        for (String path : List.of("/api/nowhere/x/y", "/api", "/s/AAAAAAAAAAAAAAAAAAAAAA/data")) {
            Answer answer = api.send(api.to(path).header("Accept", BROWSER));
            assertEquals("application/problem+json", answer.expect(404).header("Content-Type"), path);
        }
        assertEquals(
                "application/problem+json",
                api.send(api.to("/nothing.js").header("Accept", "*/*")).header("Content-Type"));
    }

    @Test
    void a_failure_of_ours_promises_nothing_of_what_was_kept() {
        String told = Problems.ourFault().getMessage();
        assertTrue(told.contains("look whether it is there already") && !told.contains("Nothing was changed"), told);
    }

    @Test
    void a_damaged_revision_is_not_blamed_on_whoever_asks_for_it() {
        String id = api.create("pieces", "{'title':'One'}").id();
        for (String content : List.of("{", "{\"title\":7}")) {
            Damage.execute(api.database.database(), "UPDATE revision SET content = '" + content + "'");
            try (Api again = new Api(api.database.again(), Patience.USUAL)) {
                again.get("/api/pieces/" + id).problem(500, "our-fault");
            }
        }
    }

    @Test
    void an_address_below_api_that_does_not_exist_is_a_problem_and_no_page() {
        for (String path :
                List.of("/api", "/api/", "/api/pieces/x/nothing", "/api/a/b/c/d/e", "/api/../api/nowhere/x/y")) {
            api.get(path).problem(404, "no-such-page");
        }
    }

    @Test
    void what_an_address_cannot_do_is_405_and_says_what_it_can() {
        String piece = api.create("pieces", "{'title':'One'}").id();
        Answer delete = api.delete("/api/pieces/" + piece);
        delete.problem(405, "method-not-allowed");
        assertEquals(Set.of("GET", "PUT"), allowed(delete));
        assertEquals(Set.of("POST"), allowed(api.get("/api/pieces/" + piece + "/revisions/1/restore")));
        assertEquals(Set.of("GET"), allowed(api.post("/api/pieces/" + piece + "/revisions", "{}")));
        api.post("/api/nowhere/x/y/z", "{}").problem(404, "no-such-page");
        Answer patch = api.send(api.to("/api/pieces").method("PATCH", BodyPublishers.ofString("{}")));
        assertEquals(Set.of("GET", "POST"), allowed(patch));
    }

    @Test
    void an_address_that_looks_like_a_kinds_still_says_what_it_can() {
        for (String address : List.of("example", "import", "blobs", "bench/divider")) {
            assertEquals(Set.of("POST"), allowed(api.get("/api/" + address)), address);
        }
        for (String address : List.of("tonight", "search", "styles", "shapes", "export", "exercise")) {
            assertEquals(Set.of("GET"), allowed(api.post("/api/" + address, "{}")), address);
        }
        assertEquals(Set.of("GET"), allowed(api.put("/api/setlists/compare", 1, "{}")));
    }

    /** RFC 9110, section 15.5.6: a 405 must carry Allow. HEAD and OPTIONS go without saying. */
    private static Set<String> allowed(Answer answer) {
        answer.problem(405, "method-not-allowed");
        Set<String> methods = new TreeSet<>(List.of(answer.header("Allow").split(", ")));
        methods.removeAll(Set.of("HEAD", "OPTIONS"));
        return methods;
    }

    @Test
    void what_is_not_json_is_400() {
        for (String body : List.of(
                "",
                " ",
                "{",
                "[]",
                "\"text\"",
                "null",
                "1",
                "{'a':1,'a':2}",
                "{} {}",
                "{'content':{'title':1e}}",
                "NaN")) {
            api.post("/api/pieces", body).problem(400, "not-json");
        }
    }

    @Test
    void bytes_that_are_not_utf8_are_400() {
        byte[] latin1 = "{\"content\":{\"title\":\"é\"}}".getBytes(StandardCharsets.ISO_8859_1);
        api.send(api.to("/api/pieces")
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofByteArray(latin1)))
                .problem(400, "not-json");
    }

    @Test
    void what_is_too_large_is_413_with_or_without_a_length() {
        String large = "{\"content\":{\"title\":\"One\",\"notes\":\"" + "x".repeat(ContentJson.MAX_BYTES) + "\"}}";
        api.post("/api/pieces", large).problem(413, "body-too-large");
        byte[] larger = "x".repeat(20_000_000).getBytes(StandardCharsets.UTF_8);
        for (var body : List.of(
                BodyPublishers.ofByteArray(larger),
                BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(larger)))) {
            api.send(api.to("/api/pieces")
                            .header("Content-Type", "application/json")
                            .POST(body))
                    .problem(413, "body-too-large");
        }
        assertEquals(List.of(), api.get("/api/pieces").items());
    }

    @Test
    void other_media_types_are_415() {
        String piece = api.create("pieces", "{'title':'One'}").id();
        for (String type :
                List.of("text/plain", "application/xml", "application/jsonp", "application/json-patch+json")) {
            api.send(api.to("/api/pieces").header("Content-Type", type).POST(BodyPublishers.ofString("{}")))
                    .problem(415, "wrong-media-type");
            api.send(api.to("/api/pieces/" + piece)
                            .header("Content-Type", type)
                            .header("If-Match", "\"r1\"")
                            .PUT(BodyPublishers.ofString("{}")))
                    .problem(415, "wrong-media-type");
        }
        api.send(api.to("/api/pieces").POST(BodyPublishers.noBody())).problem(415, "wrong-media-type");
        api.send(api.to("/api/pieces")
                        .header("Content-Type", "Application/JSON; charset=utf-8")
                        .POST(BodyPublishers.ofString("{\"content\":{\"title\":\"Two\"}}")))
                .expect(201);
    }

    @Test
    void what_cannot_be_kept_is_422_and_names_the_place() {
        Gear gear = new Gear(api);
        String rig = api.create("rigs", gear.rig(20, 20)).id();
        assertPlace("/content", "/api/pieces", "{}");
        assertPlace("/content", "/api/pieces", "{'content':null}");
        assertPlace("", "/api/pieces", "{'content':[]}");
        assertPlace("/title", "/api/pieces", "{'content':{'title':'a\\u0000b'}}");
        assertPlace("/title", "/api/pieces", "{'content':{'title':'a\\ud83c'}}");
        assertPlace("/tempoBpm", "/api/pieces", "{'content':{'title':'One','tempoBpm':1e400}}");
        assertPlace("/by", "/api/pieces", "{'content':{'title':'One'},'by':7}");
        assertPlace("/id", "/api/pieces", "{'content':{'title':'One'},'id':'x'}");
        assertPlace("/extra~1field", "/api/pieces", "{'content':{'title':'One'},'extra/field':1}");
        assertPlace("/log", "/api/pieces", "{'content':{'title':'One'},'log':{'date':'2026-11-12'}}");
        assertPlace("/log", "/api/rigs", "{'content':" + gear.rig(1, 1) + ",'log':'x'}");
        assertPlace("/log/date", "/api/rigs", "{'content':" + gear.rig(1, 1) + ",'log':{}}");
        assertPlace(
                "/log/about",
                "/api/rigs",
                "{'content':" + gear.rig(1, 1) + ",'log':{'date':'2026-11-12','about':'x'}}");
        assertPlace(
                "/log/about/x",
                "/api/rigs",
                "{'content':" + gear.rig(1, 1)
                        + ",'log':{'date':'2026-11-12','about':{'x':{'kind':'pieces','reference':{'id':'"
                        + UUID.randomUUID() + "'}}}}}");
        for (String day : List.of("+10000-01-01", "-0001-01-01", "0000-01-01", "+999999999-12-31")) {
            assertPlace("/date", "/api/log", "{'content':{'date':'" + day + "'}}");
            assertPlace("/date", "/api/setlists", "{'content':{'title':'S','date':'" + day + "'}}");
            assertPlace("/date", "/api/rigs", "{'content':" + gear.rig(1, 1).replace("2026-11-10", day) + "}");
        }
        JsonNode pinned = api.put("/api/rigs/" + rig, 1, "{'content':" + gear.rig(1, 1) + ",'stayPinned':'all'}")
                .problem(422, "invalid-content");
        assertEquals("/stayPinned", pinned.path("pointer").asText());
        assertPlace("/kind", "/api/shares", "{'kind':'pieces','id':'" + rig + "'}");
        assertPlace("/id", "/api/shares", "{'kind':'rigs'}");
        for (String revision : List.of("0", "-1", "1.5", "'1'", "99999999999")) {
            assertPlace("/revision", "/api/shares", "{'kind':'rigs','id':'" + rig + "','revision':" + revision + "}");
        }
        for (String time :
                List.of("2026-11-12T20:00:00Z", "tomorrow", "+1000000000-12-31T23:59:59.999999999Z", "2026-12-24")) {
            assertPlace("/expiresAt", "/api/shares", "{'kind':'rigs','id':'" + rig + "','expiresAt':'" + time + "'}");
        }
        assertPlace(
                "/content",
                "/api/recipes/" + api.create("recipes", gear.start(80)).id() + "/preview",
                "{}");
        assertEquals(List.of(), api.get("/api/pieces").items());
        assertEquals(List.of(), api.get("/api/shares").items());
        assertEquals(1, api.get("/api/rigs").items().size());
    }

    private void assertPlace(String pointer, String path, String body) {
        JsonNode problem = api.post(path, body).problem(422, "invalid-content");
        assertEquals(pointer, problem.path("pointer").asText(), problem::toString);
    }

    @Test
    void queries_that_make_no_sense_are_400() {
        String piece = api.create("pieces", "{'title':'One'}").id();
        for (String query : List.of(
                "limit=0",
                "limit=201",
                "limit=-1",
                "limit=x",
                "limit=1.5",
                "limit=99999999999",
                "after=x",
                "after=%00",
                "q=a%00b",
                "style=%00",
                "after=AAAA")) {
            api.get("/api/pieces?" + query).problem(400, "bad-request");
        }
        for (String query : List.of("limit=0", "limit=201", "after=x", "after=0")) {
            api.get("/api/pieces/" + piece + "/revisions?" + query).problem(400, "bad-request");
        }
        for (String query :
                List.of("", "was=" + piece, "was=" + piece + "@0&now=" + piece, "was=" + piece + "@x&now=" + piece)) {
            api.get("/api/setlists/compare?" + query).problem(400, "bad-request");
        }
        api.get("/api/pieces/" + piece + "/revisions/0").problem(400, "bad-request");
        api.get("/api/shares/qr?url=http://evil.example/s/AAAAAAAAAAAAAAAAAAAAAA")
                .problem(400, "bad-request");
        api.get("/api/shares/qr").problem(400, "bad-request");
    }

    @Test
    void odd_request_lines_do_no_harm() throws IOException {
        for (String target : List.of(
                "/api/pieces/%00",
                "/api/pieces/%2e%2e",
                "/api/pieces/%zz",
                "/api/%2F%2F",
                "/api/pieces;x=1",
                "//api/pieces",
                "/s/%2e%2e/data",
                "/../../etc/passwd",
                "/%2e%2e/%2e%2e/etc/passwd",
                "/styles/..%2f..%2fopenapi.json",
                "*")) {
            int status = RawHttp.status(api, "GET " + target + " HTTP/1.1", "Host: localhost");
            assertTrue(
                    status == 200 && target.contains("pieces") || status >= 400 && status < 500,
                    target + ": " + status);
        }
    }
}
