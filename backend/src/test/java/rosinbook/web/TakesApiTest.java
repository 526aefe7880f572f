package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rosinbook.limit.Limit;
import rosinbook.notebook.Blob;
import rosinbook.notebook.ContentJson;
import rosinbook.take.TakeReader;

/** Takes through HTTP. */
class TakesApiTest {
    private static final byte[] AIR = published("o1_air.over.mid");
    private static final byte[] AIR_CALMER = published("o1_air.reasonable.mid");

    private final Api api = new Api();

    @AfterEach
    void close() {
        api.close();
    }

    private static byte[] published(String name) {
        try (InputStream in = TakesApiTest.class.getResourceAsStream("/published/takes/" + name)) {
            return in.readAllBytes();
        } catch (IOException problem) {
            throw new AssertionError(problem);
        }
    }

    private Answer send(String method, String path, String type, byte[] body) {
        HttpRequest.Builder request = api.to(path).method(method, HttpRequest.BodyPublishers.ofByteArray(body));
        return api.send(type.isEmpty() ? request : request.header("Content-Type", type));
    }

    private byte[] get(String path, String type) {
        Answer answer = api.get(path).expect(200);
        assertTrue(answer.header("Content-Type").startsWith(type), path);
        return answer.bytes();
    }

    private JsonNode getJson(String path) {
        return json(get(path, "application/json"));
    }

    private static JsonNode json(byte[] bytes) {
        try {
            return ContentJson.strict().readTree(bytes);
        } catch (IOException problem) {
            throw new AssertionError(new String(bytes, StandardCharsets.UTF_8), problem);
        }
    }

    private JsonNode posted(int status, String path, String type, byte[] body) {
        return send("POST", path, type, body).expect(status).json();
    }

    private JsonNode posted(int status, String path, String json) {
        return posted(status, path, "application/json", json.replace('\'', '"').getBytes(StandardCharsets.UTF_8));
    }

    private JsonNode bench(String query, byte[] midi) {
        return posted(200, "/api/bench/takes" + query, "audio/midi", midi);
    }

    private static List<String> ids(JsonNode report) {
        return StreamSupport.stream(report.path("faults").spliterator(), false)
                .map(fault -> fault.path("id").asText())
                .toList();
    }

    private String takeContent(Blob blob, String more) {
        return "{'title':'Air, Wednesday','midi':{'sha256':'" + blob.sha256() + "','size':" + blob.size()
                + "},'strings':{'1':'E5','2':'A4','3':'D4','4':'G3'}" + more + "}";
    }

    private String create(byte[] midi, String more) {
        JsonNode kept = posted(201, "/api/blobs", "audio/midi", midi);
        assertEquals(Blob.of(midi).sha256(), kept.path("sha256").asText());
        return posted(201, "/api/takes", "{'content':" + takeContent(Blob.of(midi), more) + "}")
                .path("id")
                .asText();
    }

    @Test
    void the_bench_reports_without_keeping_anything() {
        JsonNode report = bench("?strings=E5,A4,D4,G3&baseChannel=1", AIR);
        assertTrue(report.path("faults").size() > 20, "the loud setting leaves many faults");
        assertEquals(
                report.path("notes").path("heard").asInt(),
                report.path("before").size());
        assertEquals(
                report.path("notes").path("kept").asInt(), report.path("after").size());
        assertEquals("E5", report.path("strings").path("1").asText());
        assertEquals("channel", report.path("layout").path("by").asText());
        assertEquals(4, report.path("perString").size());
        assertTrue(report.path("tracking").path("definition").asText().contains("notes kept"));
        assertEquals(0, getJson("/api/takes").path("items").size());
    }

    @Test
    void a_refused_repair_leaves_its_note_and_a_moved_threshold_counts_at_once() {
        JsonNode plain = bench("?strings=E5,A4,D4,G3", AIR);
        String ghost = ids(plain).stream()
                .filter(id -> id.startsWith("ghost"))
                .findFirst()
                .orElseThrow();
        JsonNode refused = bench("?strings=E5,A4,D4,G3&refused=" + ghost, AIR);
        JsonNode fault = StreamSupport.stream(refused.path("faults").spliterator(), false)
                .filter(each -> each.path("id").asText().equals(ghost))
                .findFirst()
                .orElseThrow();
        assertTrue(fault.path("refused").asBoolean());
        int note = fault.path("notes").get(0).asInt();
        assertTrue(isKept(refused, note));
        assertFalse(isKept(plain, note));
        JsonNode stern = bench("?strings=E5,A4,D4,G3&thresholds=GHOST_START:-12,GHOST_SAME_PITCH:0", AIR);
        assertTrue(ghosts(stern) < ghosts(plain), "ghosts found although their odds were put down");
    }

    private static boolean isKept(JsonNode report, int note) {
        return StreamSupport.stream(report.path("after").spliterator(), false)
                .anyMatch(kept -> StreamSupport.stream(kept.path("from").spliterator(), false)
                        .anyMatch(from -> from.asInt() == note));
    }

    private static long ghosts(JsonNode report) {
        return ids(report).stream().filter(id -> id.startsWith("ghost")).count();
    }

    @Test
    void a_kept_take_is_read_back_reported_and_exported() {
        String id = create(AIR, "");
        assertArrayEquals(AIR, get("/api/takes/" + id + "/original.mid", "audio/midi"));
        JsonNode report = getJson("/api/takes/" + id + "/report");
        assertEquals(bench("?strings=E5,A4,D4,G3", AIR), report);
        int kept = report.path("notes").path("kept").asInt();
        byte[] plain = get("/api/takes/" + id + "/clean.mid?glide=plain", "audio/midi");
        assertEquals(kept, TakeReader.GUESSING.read(plain).notes().size());
        byte[] bent = get("/api/takes/" + id + "/clean.mid", "audio/midi");
        assertEquals(kept, TakeReader.GUESSING.read(bent).notes().size());
        String xml = text(get("/api/takes/" + id + "/clean.musicxml?tempo=90&grid=2", "application/vnd.recordare"));
        assertTrue(xml.contains("<score-partwise version=\"4.0\">"), xml.substring(0, 300));
        assertEquals(
                kept + 1,
                text(get("/api/takes/" + id + "/notes.csv", "text/csv")).lines().count());
        assertEquals(
                report.path("faults").size() + 1,
                text(get("/api/takes/" + id + "/faults.csv", "text/csv"))
                        .lines()
                        .count());
    }

    /** Two notes, 28 000 s apart: 46 667 measures of four quarters at 400 a minute. */
    @Test
    void a_take_that_would_fill_too_much_sheet_music_is_refused() throws IOException {
        byte[] midi = {
            'M',
            'T',
            'h',
            'd',
            0,
            0,
            0,
            6,
            0,
            0,
            0,
            1,
            0,
            1,
            'M',
            'T',
            'r',
            'k',
            0,
            0,
            0,
            22,
            0,
            (byte) 0x90,
            0x45,
            0x40,
            1,
            (byte) 0x80,
            0x45,
            0,
            (byte) 0x83,
            (byte) 0xB5,
            0x40,
            (byte) 0x90,
            0x45,
            0x40,
            1,
            (byte) 0x80,
            0x45,
            0,
            0,
            (byte) 0xFF,
            0x2F,
            0
        };
        String path = "/api/takes/" + create(midi, "") + "/clean.musicxml?tempo=";
        api.get(path + 400).problem(422, Limit.MEASURES.type());
        api.get(path + 100).expect(200);
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    @Test
    void what_was_refused_and_moved_is_kept_with_the_take_and_can_be_tried_before_saving() {
        String id = create(AIR, "");
        JsonNode plain = getJson("/api/takes/" + id + "/report");
        String fault = ids(plain).get(0);
        String more = ",'refused':{'" + fault + "':''},'thresholds':{'TOUCHING':0.05}";
        JsonNode tried = posted(200, "/api/bench/takes", "{'content':" + takeContent(Blob.of(AIR), more) + "}");
        assertTrue(tried.path("faults").toString().contains("\"refused\":true"));
        assertEquals(0.05, tried.path("thresholds").path("TOUCHING").asDouble());
        assertEquals(plain, getJson("/api/takes/" + id + "/report"), "trying keeps nothing");
        String second = create(AIR, more);
        assertEquals(tried, getJson("/api/takes/" + second + "/report"));
    }

    @Test
    void broken_midi_is_told_with_the_byte_where_it_breaks() {
        byte[] cut = Arrays.copyOf(AIR, 40);
        for (String path : List.of("/api/bench/takes", "/api/blobs")) {
            JsonNode problem = posted(422, path, "audio/midi", cut);
            assertEquals("/problems/unreadable-midi", problem.path("type").asText());
            assertTrue(problem.path("byteOffset").isInt());
            assertTrue(problem.path("detail")
                    .asText()
                    .contains("byte " + problem.path("byteOffset").asInt()));
        }
        posted(422, "/api/bench/takes", "audio/midi", "not midi at all".getBytes(StandardCharsets.UTF_8));
        posted(422, "/api/bench/takes", "audio/midi", new byte[0]);
    }

    @Test
    void odd_requests_get_a_reason() {
        assertEquals(415, send("POST", "/api/bench/takes", "text/plain", AIR).status());
        assertEquals(
                413,
                send("POST", "/api/blobs", "audio/midi", new byte[Blob.MOST_BYTES + 1])
                        .status());
        for (String query : List.of(
                "?strings=X9",
                "?baseChannel=17",
                "?baseChannel=0",
                "?by=colour",
                "?thresholds=NOPE:1",
                "?thresholds=TOUCHING:9",
                "?thresholds=TOUCHING:NaN",
                "?thresholds=TOUCHING",
                "?exercise=1000",
                "?exercise=fast")) {
            JsonNode problem = posted(400, "/api/bench/takes" + query, "audio/midi", AIR);
            assertTrue(problem.path("detail").asText().length() > 10, query);
        }
        assertEquals(
                "/problems/unfit-take",
                posted(422, "/api/bench/takes?strings=E5,A4,D4,G3&baseChannel=16", "audio/midi", AIR)
                        .path("type")
                        .asText());
    }

    @Test
    void contents_that_cannot_be_kept_name_the_field() {
        posted(201, "/api/blobs", "audio/midi", AIR);
        Blob blob = Blob.of(AIR);
        assertEquals("/thresholds/NOPE", pointer(takeContent(blob, ",'thresholds':{'NOPE':1}")));
        assertEquals("/layout/baseChannel", pointer(takeContent(blob, ",'layout':{'baseChannel':17}")));
        assertEquals("/exercise/tempoBpm", pointer(takeContent(blob, ",'exercise':{'tempoBpm':7}")));
        assertEquals("/strings", pointer(takeContent(blob, "").replace("'4':'G3'", "'5':'G3'")));
        assertEquals("/midi/sha256", pointer(takeContent(blob, "").replace(blob.sha256(), "abc")));
        assertEquals("/midi", pointer(takeContent(new Blob("0".repeat(64), 9), "")));
    }

    private String pointer(String content) {
        JsonNode problem = posted(422, "/api/takes", "{'content':" + content + "}");
        return problem.path("pointer").asText();
    }

    @Test
    void a_rig_tells_how_its_faults_moved_with_its_settings() {
        String instrument = id(
                posted(
                        201,
                        "/api/instruments",
                        "{'content':{'title':'Violin','strings':{'1':{'note':'E5'},'2':{'note':'A4'},'3':{'note':'D4'},'4':{'note':'G3'}}}}"));
        String synth = id(posted(
                201,
                "/api/synths",
                "{'content':{'title':'Synth','inputs':6,'sensitivityScale':{'min':0,'max':40,'step':1}}}"));
        String gear = "'instrument':{'id':'" + instrument + "'},'synth':{'id':'" + synth + "'}";
        String rig = id(posted(
                201, "/api/rigs", "{'content':{'title':'Rig'," + gear + ",'assignments':{" + strings(28) + "}}}"));
        create(AIR, ",'rig':{'id':'" + rig + "'}");
        api.put("/api/rigs/" + rig, 1, "{'content':{'title':'Rig'," + gear + ",'assignments':{" + strings(20) + "}}}")
                .expect(200);
        create(AIR_CALMER, ",'rig':{'id':'" + rig + "'}");
        JsonNode told = getJson("/api/rigs/" + rig + "/takes");
        assertEquals(1, told.path("revisions").get(0).path("revision").asInt());
        assertEquals(2, told.path("revisions").get(1).path("revision").asInt());
        assertEquals(
                28,
                told.path("revisions")
                        .get(0)
                        .path("strings")
                        .get(0)
                        .path("sensitivity")
                        .asDouble());
        List<String> moves = StreamSupport.stream(told.path("moves").spliterator(), false)
                .map(JsonNode::asText)
                .toList();
        assertTrue(
                moves.stream()
                        .anyMatch(
                                move -> move.matches(
                                        "Ghosts on string \\d went from [\\d.]+ to [\\d.]+ a minute when its sensitivity went from 28 to 20\\.")),
                moves.toString());
        assertEquals(
                404,
                send("GET", "/api/rigs/" + instrument + "/takes", "", new byte[0])
                        .status());
    }

    private static String strings(int sensitivity) {
        StringBuilder strings = new StringBuilder();
        for (int string = 1; string <= 4; string++) {
            strings.append(string == 1 ? "" : ",")
                    .append("'" + string + "':{'input':" + string + ",'sensitivity':" + sensitivity + "}");
        }
        return strings.toString();
    }

    private static String id(JsonNode envelope) {
        return envelope.path("id").asText();
    }

    @Test
    void the_exercise_fits_the_strings_and_a_take_of_it_is_scored() {
        JsonNode exercise = getJson("/api/exercise?strings=E5,A4,D4,G3,C3&tempo=72");
        assertEquals(72, exercise.path("tempoBpm").asDouble());
        assertEquals(7, exercise.path("passages").size());
        JsonNode report = bench("?strings=E5,A4,D4,G3&exercise=60", AIR);
        assertTrue(report.path("score").path("onset").has("f1"));
        assertFalse(bench("?strings=E5,A4,D4,G3", AIR).has("score"));
    }

    @Test
    void every_threshold_is_described() {
        JsonNode items = getJson("/api/bench/takes/thresholds").path("items");
        JsonNode report = bench("", AIR);
        assertEquals(report.path("thresholds").size(), items.size());
        items.forEach(item -> {
            assertTrue(item.path("least").asDouble() <= item.path("standard").asDouble());
            assertTrue(item.path("standard").asDouble() <= item.path("most").asDouble());
            assertTrue(report.path("thresholds").has(item.path("name").asText()));
        });
    }

    @Test
    void a_take_cannot_be_shared() {
        String id = create(AIR, "");
        assertEquals(
                422,
                send(
                                "POST",
                                "/api/shares",
                                "application/json",
                                ("{\"kind\":\"takes\",\"id\":\"" + id + "\",\"name\":\"x\"}")
                                        .getBytes(StandardCharsets.UTF_8))
                        .status());
    }
}
