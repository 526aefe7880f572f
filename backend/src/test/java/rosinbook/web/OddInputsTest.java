package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;
import rosinbook.notebook.ContentJson;

/** Whatever comes in, the answer is never a failure of ours, and always says what is wrong. */
class OddInputsTest {
    private static final List<String> WORDS = List.of(
            "",
            "x",
            "0",
            "-1",
            "1",
            "1e400",
            "99999999999999999999",
            "true",
            "null",
            "E5",
            "H9",
            "dotted eighth",
            "2026-11-12",
            "2026-02-30",
            "+999999999-12-31",
            "00000000-0000-0000-0000-000000000000",
            "1-1-1-1-1",
            "<script>",
            "${x}",
            "%",
            "_",
            "'; DROP TABLE sheet; --",
            "\u202e",
            "\ud83c\udfbb",
            "~1",
            "a/b",
            "..",
            "\u0001",
            "\u00e9".repeat(300));

    private static Api api;
    private static List<Attempt> attempts;
    private static List<String> ids;

    /** A request that would work as it stands. */
    private record Attempt(String method, String path, String body) {}

    @BeforeContainer
    static void start() {
        api = new Api();
        Gear gear = new Gear(api);
        String piece = api.create("pieces", "{'title':'Copper Weather','tempoBpm':120}")
                .id();
        String start = api.create("recipes", gear.start(80)).id();
        String recipe = api.create("recipes", gear.following("Copper, drive", piece, start, 40))
                .id();
        String rig = api.create("rigs", gear.rig(20, 20)).id();
        String set = "{'title':'S','date':'2026-11-12','rig':{'id':'" + rig + "'},'items':{'a':{'order':1,'piece':'"
                + piece + "','recipe':{'id':'" + recipe + "'}}}}";
        String setlist = api.create("setlists", set).id();
        String note = ",'by':'Mira','reason':'why'}";
        String log = "{'date':'2026-11-12','felt':'good','text':'x','about':{'a':{'kind':'pieces','reference':{'id':'"
                + piece + "'}}}}";
        ids = List.of(gear.violin, gear.synth, piece, start, recipe, rig, setlist);
        attempts = List.of(
                new Attempt(
                        "POST",
                        "/api/instruments",
                        "{'content':"
                                + Gear.VIOLIN.replace(
                                        "'title'",
                                        "'connector':{'shape':'round','pins':{'1':{'role':{'carries':'string','string':1},'x':0,'y':0}}},'pickup':{'capacitancePicofarads':900},'title'")
                                + note),
                new Attempt(
                        "POST",
                        "/api/synths",
                        "{'content':"
                                + Gear.SYNTH.replace(
                                        "'inputs'",
                                        "'controlLines':{'level':{'label':'L','minVolts':0,'maxVolts':5,'bands':[{'fromVolts':0,'toVolts':1,'meaning':'off'}]}},'memorySlots':{'prefix':'U','first':1,'last':9},'inputs'")
                                + note),
                new Attempt(
                        "POST",
                        "/api/rigs",
                        "{'content':"
                                + gear.rig(1, 2)
                                        .replace(
                                                "'assignments'",
                                                "'adapter':{'routes':{'r':{'instrumentPin':'1','synthPin':'1','via':{'via':'resistor','ohms':4700}}}},'assignments'")
                                + ",'log':" + log + note),
                new Attempt("PUT", "/api/rigs/" + rig, "{'content':" + gear.rig(3, 4) + ",'log':" + log + note),
                new Attempt(
                        "POST",
                        "/api/pieces",
                        "{'content':{'title':'P','composer':'c','styles':['reel'],'tempoBpm':100,'meter':'6/8','key':'D','notes':'n'}"
                                + note),
                new Attempt("PUT", "/api/pieces/" + piece, "{'content':{'title':'P','styles':['reel']}" + note),
                new Attempt("POST", "/api/recipes", "{'content':" + gear.start(50) + note),
                new Attempt(
                        "PUT",
                        "/api/recipes/" + start,
                        "{'content':" + gear.start(60) + ",'stayPinned':['" + recipe + "']" + note),
                new Attempt(
                        "PUT", "/api/recipes/" + recipe, "{'content':" + gear.following("Q", piece, start, 10) + note),
                new Attempt("POST", "/api/recipes/" + start + "/preview", "{'content':" + gear.start(60) + "}"),
                new Attempt("POST", "/api/setlists", "{'content':" + set + note),
                new Attempt("PUT", "/api/setlists/" + setlist, "{'content':" + set + note),
                new Attempt("POST", "/api/setlists/" + setlist + "/played", "{'by':'Mira','reason':''}"),
                new Attempt("POST", "/api/setlists/" + setlist + "/revisions/1/restore", "{'by':'Mira','reason':''}"),
                new Attempt("POST", "/api/log", "{'content':" + log + note),
                new Attempt(
                        "POST",
                        "/api/shares",
                        "{'kind':'rigs','id':'" + rig
                                + "','revision':1,'name':'n','expiresAt':'2026-12-31T22:00:00Z'}"));
    }

    /** Whatever was let in by the odd inputs must be readable, comparable, shareable and exportable. */
    @AfterContainer
    static void everything_can_still_be_read() {
        try {
            readEverything();
        } finally {
            api.close();
        }
    }

    @Provide
    Arbitrary<String> words() {
        return Arbitraries.oneOf(Arbitraries.of(WORDS), Arbitraries.strings().ofMaxLength(30), Arbitraries.of(ids));
    }

    @Provide
    Arbitrary<JsonNode> json() {
        return Arbitraries.oneOf(leaf(), array(), object(), array().map(inner -> object("a", inner)));
    }

    private Arbitrary<JsonNode> leaf() {
        return Arbitraries.oneOf(
                words().map(word -> ContentJson.strict().getNodeFactory().textNode(word)),
                Arbitraries.doubles()
                        .map(number -> ContentJson.strict().getNodeFactory().numberNode(number)),
                Arbitraries.bigIntegers()
                        .map(number -> ContentJson.strict().getNodeFactory().numberNode(number)),
                Arbitraries.of(true, false)
                        .map(on -> ContentJson.strict().getNodeFactory().booleanNode(on)),
                Arbitraries.just(ContentJson.strict().getNodeFactory().nullNode()));
    }

    private Arbitrary<JsonNode> array() {
        return leaf().list()
                .ofMaxSize(4)
                .map(leaves -> ContentJson.strict().createArrayNode().addAll(leaves));
    }

    private Arbitrary<JsonNode> object() {
        Arbitrary<String> names = Arbitraries.oneOf(
                words(),
                Arbitraries.of(
                        "id",
                        "revision",
                        "note",
                        "carries",
                        "via",
                        "order",
                        "title",
                        "kind",
                        "reference",
                        "type",
                        "on"));
        return Arbitraries.maps(names, leaf()).ofMaxSize(4).map(members -> {
            ObjectNode object = ContentJson.strict().createObjectNode();
            object.setAll(members);
            return object;
        });
    }

    private static JsonNode object(String name, JsonNode member) {
        return ContentJson.strict().createObjectNode().set(name, member);
    }

    @Provide
    Arbitrary<Integer> numbers() {
        return Arbitraries.integers().between(0, 10_000);
    }

    private static void assertFair(Answer answer, Object about) {
        assertTrue(answer.status() < 500, () -> about + " is answered with " + answer.status() + " " + answer.text());
        if (answer.status() >= 400 && !answer.header("Content-Type").startsWith("text/html")) {
            assertEquals("application/problem+json", answer.header("Content-Type"), about::toString);
            assertTrue(answer.json().path("detail").asText().length() > 5, answer::text);
        }
    }

    private static Answer send(Attempt attempt, JsonNode body) {
        return api.send(api.to(attempt.path())
                .header("Content-Type", "application/json")
                .header("If-Match", "\"r1\"")
                .method(attempt.method(), BodyPublishers.ofString(body.toString(), StandardCharsets.UTF_8)));
    }

    @Property(tries = 1500, seed = "20261112")
    void one_odd_value_anywhere_in_a_good_body(
            @ForAll("numbers") int which, @ForAll("numbers") int where, @ForAll("json") JsonNode odd) {
        Attempt attempt = attempts.get(which % attempts.size());
        JsonNode body = Api.json(attempt.body());
        List<Runnable> places = new ArrayList<>();
        collect(body, odd, places);
        places.get(where % places.size()).run();
        assertFair(send(attempt, body), attempt.method() + " " + attempt.path() + " " + body);
    }

    private static void collect(JsonNode node, JsonNode odd, List<Runnable> places) {
        if (node instanceof ObjectNode object) {
            object.properties().forEach(member -> {
                places.add(() -> object.set(member.getKey(), odd));
                collect(member.getValue(), odd, places);
            });
            places.add(() -> object.set("odd", odd));
        }
        if (node instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                int index = i;
                places.add(() -> array.set(index, odd));
                collect(array.get(i), odd, places);
            }
        }
    }

    @Property(tries = 100, seed = "20261113")
    void any_body_at_all(@ForAll("numbers") int which, @ForAll("json") JsonNode body) {
        Attempt attempt = attempts.get(which % attempts.size());
        assertFair(send(attempt, body), attempt.method() + " " + attempt.path() + " " + body);
    }

    @Property(tries = 100, seed = "20261114")
    void any_bytes_at_all(@ForAll("numbers") int which, @ForAll byte[] bytes) {
        Attempt attempt = attempts.get(which % attempts.size());
        assertFair(
                api.send(api.to(attempt.path())
                        .header("Content-Type", which % 2 == 0 ? "application/json" : "application/zip")
                        .header("If-Match", "\"r1\"")
                        .method(attempt.method(), BodyPublishers.ofByteArray(bytes))),
                attempt);
        assertFair(
                api.send(api.to("/api/import")
                        .header("Content-Type", "application/zip")
                        .POST(BodyPublishers.ofByteArray(bytes))),
                "import");
    }

    @Property(tries = 300, seed = "20261115")
    void any_segment_and_any_query(
            @ForAll("numbers") int which,
            @ForAll("words") String segment,
            @ForAll("words") String one,
            @ForAll("words") String two) {
        String id = ids.get(which % ids.size());
        String odd = Api.encoded(segment).replace("+", "%20");
        String query =
                "?q=" + Api.encoded(one) + "&after=" + Api.encoded(two) + "&style=" + Api.encoded(one) + "&limit="
                        + (which % 3 == 0 ? Api.encoded(two) : "5") + "&was=" + Api.encoded(one) + "&now="
                        + Api.encoded(two) + "&revision="
                        + Api.encoded(one) + "&all=" + Api.encoded(two) + "&format=" + Api.encoded(two) + "&url="
                        + Api.encoded(one);
        List<String> paths = List.of(
                "/api/" + odd,
                "/api/pieces",
                "/api/rigs",
                "/api/log",
                "/api/pieces/" + odd,
                "/api/" + odd + "/" + id,
                "/api/recipes/" + id + "/revisions/" + odd,
                "/api/recipes/" + id + "/" + odd,
                "/api/recipes/" + id + "/compare",
                "/api/setlists/" + id + "/compare",
                "/api/rigs/" + id + "/revisions",
                "/api/recipes/" + id + "/resolved",
                "/api/recipes/" + id + "/followers",
                "/api/rigs/" + id + "/strings",
                "/api/" + odd + "/" + id + "/file",
                "/api/setlists/" + id + "/file",
                "/api/search",
                "/api/setlists/compare",
                "/api/shares/qr",
                "/api/tonight",
                "/s/" + odd,
                "/s/" + odd + "/data",
                "/api/synths/" + id + "/used-by");
        Answer answer = api.send(api.to(paths.get(which % paths.size()) + query));
        boolean refusedBeforeUs = answer.status() == 400
                && answer.header("Content-Security-Policy").isEmpty();
        if (!refusedBeforeUs) {
            assertFair(answer, paths.get(which % paths.size()) + query);
        }
    }

    @Property(tries = 100, seed = "20261116")
    void any_if_match(@ForAll("numbers") int which, @ForAll("words") String tag, @ForAll("numbers") int number) {
        Attempt attempt = attempts.get(which % attempts.size());
        String plain = tag.replaceAll("[^\\x20-\\x7e]", "?");
        for (String header : List.of(plain, "\"" + plain + "\"", "\"r" + number + "\"", "\"r" + number + "00000\"")) {
            assertFair(
                    api.send(api.to(attempt.path())
                            .header("Content-Type", "application/json")
                            .header("If-Match", header)
                            .method(attempt.method(), BodyPublishers.ofString(Api.quoted(attempt.body())))),
                    attempt + " " + header);
        }
    }

    private static void readEverything() {
        for (String kind : List.of("instruments", "synths", "rigs", "pieces", "recipes", "setlists", "log")) {
            String address = "/api/" + kind + "?limit=200";
            for (JsonNode sheet : api.get(address).expect(200).items()) {
                String path = "/api/" + kind + "/" + sheet.path("id").asText();
                api.get(path + "/compare?was=1").expect(200);
                api.get(path + "/used-by").expect(200);
                if (kind.equals("recipes")) {
                    api.get(path + "/resolved").expect(200);
                }
                if (List.of("rigs", "recipes", "setlists").contains(kind)) {
                    api.get(path + "/file").expect(200);
                }
            }
        }
        api.get("/api/tonight").expect(200);
        api.get("/api/shares").expect(200);
        try (Api other = new Api()) {
            other.send(other.to("/api/import")
                            .header("Content-Type", "application/zip")
                            .POST(BodyPublishers.ofByteArray(
                                    api.get("/api/export").expect(200).bytes())))
                    .expect(200);
        }
    }
}
