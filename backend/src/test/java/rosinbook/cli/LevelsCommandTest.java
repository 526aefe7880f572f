package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class LevelsCommandTest {
    private static final String REEL = "src/test/resources/published/levels/reel.wav";

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @Test
    void json_has_inputs_segments_leaks_and_windows() throws IOException {
        assertEquals(0, run(REEL, "--strings", "E5,A4,D4,G3", "--mains", "50", "--json"), err.toString());
        JsonNode answer = new ObjectMapper().readTree(out.toString());
        for (String field : new String[] {"input", "noiseDbfs", "humDbfs", "peakDbfs", "clippedSamples", "dcOffset"}) {
            assertTrue(answer.at("/inputs/0/" + field).isNumber(), field);
        }
        for (String field : new String[] {"string", "from", "to", "rmsDbfs"}) {
            assertTrue(answer.at("/segments/11/" + field).isNumber(), field);
        }
        assertEquals("loud", answer.at("/segments/11/loudness").asText());
        assertEquals(0, answer.at("/crosstalkDb/2/2").asDouble());
        assertEquals(-19.7, answer.at("/crosstalkDb/1/0").asDouble(), 0.25);
        for (String field : new String[] {"string", "lowDbfs", "highDbfs", "widthDb"}) {
            assertTrue(answer.at("/windows/3/" + field).isNumber(), field);
        }
        assertEquals("G3", answer.at("/strings/3/open").asText());
        assertTrue(answer.at("/waveform").isMissingNode());
    }

    @Test
    void segments_it_printed_can_be_corrected_and_given_back() throws IOException {
        run(REEL, "--json");
        Path segments = Files.writeString(
                folder.resolve("segments.json"),
                out.toString().replace("\"loudness\":\"soft\"", "\"loudness\":\"medium\""));
        out.getBuffer().setLength(0);
        assertEquals(0, run(REEL, "--segments", segments.toString(), "--json"), err.toString());
        assertEquals(
                "medium",
                new ObjectMapper()
                        .readTree(out.toString())
                        .at("/segments/0/loudness")
                        .asText());
    }

    @Test
    void text_is_for_a_person_and_ends_with_cautions() {
        assertEquals(
                0, run(REEL, "--scale", "0,100", "--start", "20", "--step-readings", "10=-30,20=-20"), err.toString());
        assertTrue(out.toString().contains("Trigger windows"));
        assertTrue(out.toString().contains("(usual start 20)"), out.toString());
        assertTrue(out.toString().contains("85 dBA for 8 hours"), out.toString());
    }

    @Test
    void a_string_without_a_window_is_a_warning() {
        assertEquals(1, run(REEL, "--margin", "20"));
        assertTrue(out.toString().contains("has no window"));
    }

    @Test
    void what_cannot_be_read_is_refused_in_a_sentence() throws IOException {
        Path text = Files.writeString(folder.resolve("text.wav"), "This is no recording at all.");
        assertRefused("This is no WAV file: it starts with \"This\"", text.toString());
        assertRefused("There is no file", folder.resolve("nothing.wav").toString());
        assertRefused("A file cannot be read: Is a directory", folder.toString());
        assertRefused("give either FILE.wav or --stroke files");
        assertRefused("'H9' is not a note", REEL, "--strings", "H9");
        assertRefused("mains of 55 Hz; give 50 or 60", REEL, "--mains", "55");
        assertRefused("5 strings for 4 inputs", REEL, "--strings", "E5,A4,D4,G3,C3");
        assertRefused("is no list of segments", REEL, "--segments", text.toString());
        assertRefused("write --stroke 1-soft=FILE.wav", "--stroke", "x=" + REEL);
        assertRefused("a file for one string and loudness is mono", "--stroke", "1-soft=" + REEL);
    }

    private void assertRefused(String message, String... arguments) {
        err.getBuffer().setLength(0);
        assertEquals(2, run(arguments), message);
        assertTrue(err.toString().contains(message), err.toString());
        assertEquals(1, err.toString().lines().count(), err.toString());
    }

    private int run(String... arguments) {
        return new CommandLine(new LevelsCommand())
                .setOut(new PrintWriter(out, true))
                .setErr(new PrintWriter(err, true))
                .execute(arguments);
    }

    @Test
    void null_in_place_of_segments_is_told_in_a_sentence() throws IOException {
        for (String nothing : new String[] {"[null]", "null", "{\"segments\":null}"}) {
            Path text = Files.writeString(folder.resolve("null.json"), nothing);
            assertRefused("is no list of segments: null stands", REEL, "--segments", text.toString());
        }
    }
}
