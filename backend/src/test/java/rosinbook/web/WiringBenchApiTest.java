package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The wiring bench over HTTP. */
class WiringBenchApiTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static Api api;
    private static String violinRig;
    private static String ownPlugRig;

    @BeforeAll
    static void open() throws Exception {
        api = new Api();
        assertEquals(201, post("/api/example", "{}").status());
        for (JsonNode rig : api.get("/api/rigs").json().get("items")) {
            if (rig.get("content").has("adapter")) {
                violinRig = rig.get("id").asText();
            } else {
                ownPlugRig = rig.get("id").asText();
            }
        }
    }

    @AfterAll
    static void close() {
        api.close();
    }

    private static Answer post(String path, String body) {
        return api.post(path, body);
    }

    private static ObjectNode violin() throws IOException {
        return (ObjectNode) JSON.readTree(Files.readString(Path.of("src/test/resources/wiring/violin.json")));
    }

    private static void assertProblem(Answer answer, int status, String type, String pointer, String words) {
        assertEquals(status, answer.status(), answer.json().toString());
        assertEquals("/problems/" + type, answer.json().get("type").asText());
        assertEquals(pointer, answer.json().path("pointer").asText());
        assertTrue(
                answer.json().get("detail").asText().contains(words),
                answer.json().toString());
    }

    @Test
    void half_of_a_rail_comes_from_two_equal_resistors() throws Exception {
        // Kuphaldt, Lessons in Electric Circuits I, ch. 6: equal resistors halve a voltage.
        JsonNode answer = post("/api/bench/divider", "{\"supplyVolts\": 9, \"targetVolts\": 4.5}")
                .json();
        JsonNode best = answer.get("best");
        assertEquals(best.get("upperOhms"), best.get("lowerOhms"));
        assertEquals(4.5, best.get("volts").asDouble(), 1e-12);
        assertEquals(10, answer.get("alternatives").size());
    }

    @Test
    void a_divider_that_cannot_exist_says_why_and_what_comes_nearest() throws Exception {
        Answer answer = post("/api/bench/divider", "{\"supplyVolts\": 7, \"targetVolts\": 9}");
        assertProblem(answer, 422, "impossible-divider", "", "targetVolts is 9, not below the supply");
        assertTrue(answer.json().get("nearest").get("volts").asDouble() < 7);
    }

    /** Each row: address, body, pointer, what the sentence must name. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
            divider | {"targetVolts": 1}                                        | /supplyVolts | is missing
            divider | {"supplyVolts": 0, "targetVolts": 1}                      | /supplyVolts | supplyVolts is 0
            divider | {"supplyVolts": 7, "targetVolts": 1, "loadOhms": -3}      | /loadOhms | loadOhms is -3
            divider | {"supplyVolts": 7, "targetVolts": "1"}                    | /targetVolts | Cannot coerce
            divider | {"supplyVolts": 7, "targetVolts": 1, "magic": 1}          | /magic | no such field
            probe   | {"strings": 4, "pins": {}}                                | /pins | pins has 0 entries
            probe   | {"strings": 4, "pins": {"1": {"bowed": {"9": {"acMillivolts": 3}}}}} | /pins | for string 9
            probe   | {"strings": 4, "rig": "x"}                                | /strings | stands beside rig
            adapter | {}                                                        | /instrument | instrument is missing
            adapter | {"parts": {"tolerancePercent": 90}}                       | /parts/tolerancePercent | 90
            wiring  | {"instrument": {"connector": {"pins": {"1": {"role": {"carries": "magic"}}}}}} | /instrument/connector/pins/1/role | magic
            wiring  | {"adapter": {"routes": {"a/b": {"instrumentPin": "1", "synthPin": "2", "via": {"via": "resistor", "ohms": -5}}}}} | /adapter/routes/a~1b/via/ohms | ohms is -5
            """)
    void what_is_wrong_is_named_with_its_place(String address, String body, String pointer, String words)
            throws Exception {
        assertProblem(post("/api/bench/" + address, body), 422, "invalid-content", pointer, words);
    }

    @Test
    void a_bare_wiring_gets_its_bench_sheet_and_drawings_of_both_sides() throws Exception {
        ObjectNode violin = violin();
        violin.set(
                "readings",
                JSON.readTree("{\"ohms instrument pin 1 > synth pin 1\": {\"read\": \"ohms\", \"ohms\": 0.4},"
                        + " \"ohms instrument pin 5 > synth pin 5\": {\"read\": \"open\"}}"));
        JsonNode sheet = post("/api/bench/wiring", violin.toString()).json();
        assertTrue(sheet.get("readyToSolder").asBoolean());
        assertFalse(sheet.get("isProposed").asBoolean());
        assertTrue(sheet.get("drawings").get("mating").asText().contains("MATING SIDE"));
        assertTrue(sheet.get("drawings").get("solder").asText().contains("SOLDER SIDE"));
        assertEquals("good", sheet.get("verdicts").get(0).get("judgement").asText());
        assertEquals("wrong", sheet.get("verdicts").get(1).get("judgement").asText());
        assertTrue(
                sheet.get("verdicts").get(1).get("suspects").size() > 0,
                sheet.get("verdicts").toString());
        assertTrue(sheet.get("netlist").asText().endsWith(".end\n"));
        assertTrue(sheet.get("partsCsv").asText().startsWith("reference,route,part"));
        assertEquals(
                sheet.get("readyToSolder"),
                post("/api/bench/wiring", sheet.get("file").toString()).json().get("readyToSolder"));
    }

    @Test
    void an_unsafe_route_takes_the_mark_away() throws Exception {
        ObjectNode violin = violin();
        ((ObjectNode) violin.get("adapter").get("routes"))
                .set("slip", JSON.readTree("{\"synthPin\": \"2\", \"via\": {\"via\": \"tied\"}}"));
        JsonNode sheet = post("/api/bench/wiring", violin.toString()).json();
        assertFalse(sheet.get("readyToSolder").asBoolean());
        assertEquals("rail-to-ground", sheet.get("findings").get(0).get("code").asText());
        assertEquals("slip", sheet.get("findings").get(0).get("routes").get(0).asText());
    }

    @Test
    void a_players_words_stay_words_in_the_drawing() throws Exception {
        ObjectNode violin = violin();
        ((ObjectNode) violin.get("instrument").get("connector")).put("name", "<script>alert(1)</script>");
        String drawing = post("/api/bench/wiring", violin.toString())
                .json()
                .get("drawings")
                .get("mating")
                .asText();
        assertFalse(drawing.contains("<script"), drawing);
        assertFalse(drawing.contains("style="), "the pages' policy refuses inline style");
    }

    @Test
    void a_kept_rig_is_checked_by_its_id_and_by_its_revision() throws Exception {
        JsonNode newest =
                post("/api/bench/wiring", "{\"rig\": \"" + violinRig + "\"}").json();
        assertTrue(newest.get("adapter").get("routes").has("string-4"), newest.toString());
        JsonNode first =
                post("/api/bench/wiring", "{\"rig\": \"" + violinRig + "@1\"}").json();
        assertFalse(first.get("adapter").get("routes").has("string-4"));
        assertTrue(first.get("adapter").get("routes").has("input-4"));
    }

    @Test
    void a_rig_without_adapter_gets_one_proposed() throws Exception {
        JsonNode sheet =
                post("/api/bench/wiring", "{\"rig\": \"" + ownPlugRig + "\"}").json();
        assertTrue(sheet.get("isProposed").asBoolean());
        assertTrue(sheet.get("adapter").get("routes").has("string-5"));
        assertEquals(
                "straight",
                sheet.get("adapter")
                        .get("routes")
                        .get("control-10")
                        .get("via")
                        .get("via")
                        .asText());
    }

    @Test
    void a_control_line_is_held_by_a_divider_when_somebody_says_at_what() throws Exception {
        JsonNode proposal = post(
                        "/api/bench/adapter", "{\"rig\": \"" + violinRig + "\", \"wantedVolts\": {\"source\": 2}}")
                .json();
        JsonNode way = proposal.get("adapter").get("routes").get("control-10").get("via");
        assertEquals("divider", way.get("via").asText(), proposal.toString());
        assertEquals(2, way.get("targetVolts").asDouble());
        assertTrue(
                proposal.get("remarks").toString().contains("level"),
                "a line nobody spoke of is left open and said so");
    }

    @Test
    void a_rig_that_is_not_there_or_cannot_be_checked_is_said_so() throws Exception {
        assertEquals(
                404,
                post("/api/bench/wiring", "{\"rig\": \"" + UUID.randomUUID() + "\"}")
                        .status());
        assertEquals(404, post("/api/bench/wiring", "{\"rig\": \"last-week\"}").status());
        assertProblem(
                post("/api/bench/wiring", "{\"rig\": \"" + violinRig + "@0\"}"),
                422,
                "invalid-content",
                "/rig",
                "no revision");
        assertEquals(
                404,
                post("/api/bench/wiring", "{\"rig\": \"" + violinRig + "@4000\"}")
                        .status());
        assertProblem(
                post("/api/bench/probe", "{\"rig\": \"" + violinRig + "\"}"),
                422,
                "invalid-content",
                "/rig",
                "measure them first");
    }

    @Test
    void pins_tell_what_they_carry_and_a_kept_probe_tells_the_same() throws Exception {
        String pins =
                """
                {"1": {"toGround": {"read": "ohms", "ohms": 0.2}},
                 "2": {"silence": {"acMillivolts": 0.3}, "bowed": {"1": {"acMillivolts": 40}, "2": {"acMillivolts": 2}, "3": {"acMillivolts": 1}, "4": {"acMillivolts": 1}}}}
                """;
        JsonNode report = post("/api/bench/probe", "{\"strings\": 4, \"pins\": " + pins + "}")
                .json();
        assertEquals(
                "ground", report.get("pins").get("1").get("role").get("carries").asText());
        assertEquals(1, report.get("pins").get("2").get("role").get("string").asInt());
        assertFalse(report.get("pins").get("2").get("reason").asText().isEmpty());

        ObjectNode instrument = (ObjectNode)
                JSON.readTree(
                        """
                {"title": "Borrowed violin", "strings": {"1": {"note": "E5"}, "2": {"note": "A4"}, "3": {"note": "D4"}, "4": {"note": "G3"}},
                 "connector": {"pins": {"1": {}, "2": {}}}}
                """);
        instrument.set("probe", JSON.readTree(pins));
        String synth =
                api.get("/api/synths").json().get("items").get(0).get("id").asText();
        String kept = created("instruments", instrument);
        String rig = created("rigs", (ObjectNode) JSON.readTree("{\"title\": \"Borrowed\", \"instrument\": {\"id\": \""
                + kept + "\"}, \"synth\": {\"id\": \"" + synth + "\"}}"));
        assertEquals(
                report, post("/api/bench/probe", "{\"rig\": \"" + rig + "\"}").json());
    }

    @Test
    void meter_readings_are_kept_with_the_rig_under_the_plans_own_names() throws Exception {
        JsonNode rig = api.get("/api/rigs/" + violinRig).json();
        ObjectNode content = rig.get("content").deepCopy();
        String step = post("/api/bench/wiring", "{\"rig\": \"" + violinRig + "\"}")
                .json()
                .get("meterPlan")
                .get(0)
                .get("id")
                .asText();
        content.putObject("readings").putObject(step).put("read", "ohms").put("ohms", 0.3);
        content.put("title", "Measured");
        String kept = created("rigs", content);
        JsonNode sheet =
                post("/api/bench/wiring", "{\"rig\": \"" + kept + "\"}").json();
        assertEquals(step, sheet.get("verdicts").get(0).get("step").asText());
    }

    private static String created(String kind, ObjectNode content) throws Exception {
        ObjectNode body = JSON.createObjectNode();
        body.set("content", content);
        Answer answer = post("/api/" + kind, body.toString().replace("'", "’"));
        assertEquals(201, answer.status(), answer.json().toString());
        return answer.json().get("id").asText();
    }
}
