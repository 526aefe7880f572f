package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

class WiringCommandTest {
    @TempDir
    private Path folder;

    @Test
    void a_good_wiring_ends_with_status_zero_and_has_everything_in_json() throws Exception {
        Run run = run(resource("violin.json"), "--json");
        assertEquals(0, run.status(), run.err());
        JsonNode answer = Answers.JSON.readTree(run.out());
        assertTrue(answer.get("readyToSolder").asBoolean());
        assertEquals(0, answer.get("findings").size(), run.out());
        assertEquals("both sounds", answer.get("controls").get(1).get("meaning").asText());
        assertTrue(answer.get("meterPlan").size() > 20);
        assertEquals(4, answer.get("strings").size());
        assertFalse(answer.has("proposedAdapter"));
    }

    @Test
    void the_documented_example_is_a_good_wiring() throws Exception {
        String page = Files.readString(Path.of("docs/wiring-file.md"));
        String example = page.substring(page.indexOf("```json") + 7, page.lastIndexOf("```"));
        Path file = folder.resolve("example.json");
        Files.writeString(file, example);
        Run run = run(file.toString(), "--json");
        assertEquals(0, run.status(), run.err());
        assertEquals(0, Answers.JSON.readTree(run.out()).get("findings").size(), run.out());
    }

    @Test
    void an_unsafe_wiring_ends_with_status_one_and_names_the_rule() throws Exception {
        Run run = run(resource("violin-rail-to-ground.json"), "--json");
        assertEquals(1, run.status(), run.err());
        JsonNode first = Answers.JSON.readTree(run.out()).get("findings").get(0);
        assertEquals("rail-to-ground", first.get("code").asText());
        assertEquals("unsafe", first.get("severity").asText());
        assertEquals("slip", first.get("routes").get(0).asText());
        assertTrue(run(resource("violin-rail-to-ground.json")).out().contains("NOT READY TO SOLDER."));
    }

    @Test
    void a_file_without_adapter_gets_one_proposed_that_is_safe() throws Exception {
        Run run = run(resource("violin-without-adapter.json"), "--json");
        assertEquals(0, run.status(), run.err());
        JsonNode routes =
                Answers.JSON.readTree(run.out()).get("proposedAdapter").get("routes");
        assertEquals(
                47_000, routes.get("control-12").get("via").get("upperOhms").asDouble());
    }

    @Test
    void netlist_drawing_and_parts_are_written_where_asked() throws Exception {
        Path netlist = folder.resolve("out.cir");
        Path drawing = folder.resolve("out.svg");
        Path parts = folder.resolve("out.csv");
        Run run = run(
                resource("violin.json"),
                "--netlist",
                netlist.toString(),
                "--svg",
                drawing.toString(),
                "--parts",
                parts.toString());
        assertEquals(0, run.status(), run.err());
        assertTrue(Files.readString(netlist).endsWith(".end\n"));
        assertTrue(Files.readString(drawing).startsWith("<svg "));
        assertTrue(Files.readString(parts).contains("R1,level,upper,2.7 kΩ"));
        assertTrue(run.out().contains("Nothing unsafe found."), run.out());
    }

    /** Each row: the file's content, and what the sentence must name. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
            {                                          | is no JSON
            [1,2]                                      | wrong shape
            null                                       | holds null
            ``                                         | wrong shape
            {}                                         | instrument is missing
            {"format":"something"}                     | format is not 'rosinbook wiring'
            {"version":2}                              | version is 2; this program reads version 1
            {"instrument":{}}                          | at instrument: connector is missing
            {"version":1,"version":1}                  | is no JSON
            {"instrument":{"connector":{"pins":{}}}}   | at instrument/connector: pins has 0 entries
            {"instrument":{"connector":{"pins":{"1":{"role":{"carries":"magic"}}}}}} | at instrument/connector/pins/1/role
            {"instrument":{"connector":{"pins":{"1":{"role":{"carries":"supply","volts":"NaN"}}}}}} | volts is NaN
            {"instrument":{"connector":{"pins":{"1":{"role":{"carries":"string","string":2.5}}}}}} | at instrument/connector/pins/1/role/string
            {"instrument":{"connector":{"pins":{"1":{}}},"notes":{}}} | that field is not known here; known are connector, openNotes, pickup
            {"instrument":{"connector":{"pins":{"1":{}}},"openNotes":{"1":"H9"}}} | 'H9' is not a note
            {"adapter":{"routes":{"a":{"instrumentPin":"1","synthPin":"2","via":{"via":"resistor","ohms":-5}}}}} | at adapter/routes/a/via: ohms is -5
            """)
    void a_file_that_is_no_wiring_ends_with_status_two_and_says_where(String content, String sentence)
            throws Exception {
        Path file = folder.resolve("bad.json");
        Files.writeString(file, content);
        Run run = run(file.toString(), "--json");
        assertEquals(2, run.status());
        assertEquals("", run.out());
        assertTrue(run.err().contains(sentence), run.err());
        assertFalse(run.err().contains("\tat ") || run.err().contains("Exception"), run.err());
    }

    @Test
    void a_file_that_is_not_there_or_cannot_be_written_is_said_so() {
        assertTrue(run(folder.resolve("none.json").toString()).err().contains("is not there"));
        Run run = run(
                resource("violin.json"),
                "--svg",
                folder.resolve("no/such/out.svg").toString());
        assertEquals(2, run.status());
        assertTrue(run.err().contains("cannot be written"), run.err());
    }

    @Test
    void json_nested_a_hundred_thousand_deep_is_refused() throws Exception {
        Path file = folder.resolve("deep.json");
        Files.writeString(file, "[".repeat(100_000));
        assertEquals(2, run(file.toString()).status());
    }

    private record Run(int status, String out, String err) {}

    private static String resource(String name) {
        return Path.of("src/test/resources/wiring").resolve(name).toString();
    }

    private static Run run(String... arguments) {
        var out = new StringWriter();
        var err = new StringWriter();
        int status = new CommandLine(new WiringCommand())
                .setOut(new PrintWriter(out, true))
                .setErr(new PrintWriter(err, true))
                .execute(arguments);
        return new Run(status, out.toString(), err.toString());
    }

    @Test
    void what_would_overwrite_another_file_of_the_same_call_is_refused() throws Exception {
        Path file = Files.copy(Path.of(resource("violin.json")), folder.resolve("mine.json"));
        byte[] before = Files.readAllBytes(file);
        Path other = folder.resolve("out");
        for (List<String> odd : List.of(
                List.of("--parts", file.toString()),
                List.of("--svg", other.toString(), "--netlist", other.toString()))) {
            List<String> arguments = new ArrayList<>(List.of(file.toString()));
            arguments.addAll(odd);
            Run run = run(arguments.toArray(String[]::new));
            assertEquals(2, run.status(), run.out());
            assertTrue(run.err().contains("give every file a name of its own."), run.err());
        }
        assertArrayEquals(before, Files.readAllBytes(file));
        assertFalse(Files.exists(other));
    }
}
