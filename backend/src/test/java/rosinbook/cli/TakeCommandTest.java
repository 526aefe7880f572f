package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TakeCommandTest {
    private static final String VIOLIN = "E5,A4,D4,G3";

    @TempDir
    private Path folder;

    private String take;
    private String truth;

    private record Outcome(int status, String out, String err) {}

    @BeforeEach
    void bringFiles() throws Exception {
        take = published("o1_air.over.mid");
        truth = published("o1_air.truth.mid");
    }

    @Test
    void json_tells_notes_faults_strings_and_scores() throws Exception {
        JsonNode answer = json(run("take", take, "--strings", VIOLIN, "--truth", truth, "--json"));
        assertEquals(462, answer.at("/notes/heard").asInt());
        assertEquals(90, answer.at("/notes/kept").asInt());
        assertEquals(74.7, answer.at("/seconds").asDouble(), 3);
        JsonNode fault = answer.at("/faults/0");
        for (String name : new String[] {"kind", "string", "at", "note", "because"}) {
            assertTrue(fault.has(name), name + " in " + fault);
        }
        assertEquals(4, answer.at("/perString").size());
        assertTrue(
                answer.at("/perString/1/faults/ghost").asInt() > 0,
                answer.at("/perString").toString());
        assertTrue(answer.at("/score/onset/f1").asDouble() > 0.95);
        assertTrue(answer.at("/score/pitchOnsetOffset/recall").asDouble() > 0.5);
        assertEquals(0.322, answer.at("/scoreRaw/onset/f1").asDouble(), 0.001);
    }

    @Test
    void without_a_truth_there_is_no_score() throws Exception {
        JsonNode answer = json(run("take", take, "--strings", VIOLIN, "--json"));
        assertFalse(answer.has("score"));
        assertFalse(answer.has("scoreRaw"));
    }

    @Test
    void the_cleaned_file_scores_as_was_said_and_is_clean() throws Exception {
        String clean = folder.resolve("clean.mid").toString();
        JsonNode first = json(run("take", take, "--strings", VIOLIN, "--truth", truth, "--clean", clean, "--json"));
        JsonNode again = json(run("take", clean, "--strings", VIOLIN, "--truth", truth, "--json"));
        assertEquals(first.at("/score"), again.at("/scoreRaw"));
        assertEquals(0, again.at("/faults").size());
    }

    @Test
    void sheet_music_is_written() throws Exception {
        Path sheet = folder.resolve("air.musicxml");
        assertEquals(
                0,
                run("take", take, "--musicxml", sheet.toString(), "--tempo", "130")
                        .status());
        assertTrue(Files.readString(sheet).contains("<per-minute>130.0</per-minute>"));
    }

    @Test
    void a_person_reads_counts_reasons_and_advice() {
        Outcome outcome = run("take", take);
        assertEquals(0, outcome.status());
        assertTrue(outcome.out().startsWith("462 notes heard, 90 kept, "), outcome.out());
        assertTrue(outcome.out().contains("may help"), outcome.out());
    }

    @Test
    void what_is_wrong_is_said_in_a_sentence() throws Exception {
        Path broken = Files.write(folder.resolve("broken.mid"), new byte[] {'M', 'T', 'h', 'd', 0, 0});
        assertRefused("starts with MThd", "take", broken.toString());
        assertRefused("no file", "take", folder.resolve("none.mid").toString());
        assertRefused("is not a note", "take", take, "--strings", "E5,H4");
        assertRefused("give 1 to 16", "take", take, "--base-channel", "17");
        assertRefused(
                "give 20 to 400",
                "take",
                take,
                "--musicxml",
                folder.resolve("x").toString(),
                "--tempo",
                "3");
        assertRefused("bend, plain", "take", take, "--glide", "steep");
    }

    private static void assertRefused(String reason, String... arguments) {
        Outcome outcome = run(arguments);
        assertEquals(2, outcome.status(), outcome.err());
        assertTrue(outcome.err().contains(reason), outcome.err());
        assertFalse(outcome.err().contains("\tat "), outcome.err());
    }

    private static JsonNode json(Outcome outcome) throws Exception {
        assertEquals(0, outcome.status(), outcome.err());
        return new ObjectMapper().readTree(outcome.out());
    }

    private static Outcome run(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int status = Main.commandLine()
                .setOut(new PrintWriter(out, true))
                .setErr(new PrintWriter(err, true))
                .execute(arguments);
        return new Outcome(status, out.toString(), err.toString());
    }

    private String published(String name) throws Exception {
        Path file = folder.resolve(name);
        try (InputStream in = TakeCommandTest.class.getResourceAsStream("/published/takes/" + name)) {
            Files.copy(in, file);
        }
        return file.toString();
    }

    @Test
    void what_would_overwrite_another_file_of_the_same_call_is_refused_and_nothing_is_written() throws Exception {
        byte[] before = Files.readAllBytes(Path.of(take));
        Path link = Files.createSymbolicLink(folder.resolve("link.mid"), Path.of(take));
        String both = folder.resolve("both").toString();
        for (String[] odd : new String[][] {
            {"--clean", take},
            {"--musicxml", link.toString()},
            {"--truth", truth, "--clean", truth},
            {"--clean", folder + "/./both", "--musicxml", both},
        }) {
            List<String> arguments = new ArrayList<>(List.of("take", take));
            arguments.addAll(List.of(odd));
            assertRefused("give every file a name of its own", arguments.toArray(String[]::new));
        }
        assertArrayEquals(before, Files.readAllBytes(Path.of(take)));
        assertFalse(Files.exists(Path.of(both)));
    }

    @Test
    void a_file_that_cannot_be_written_to_its_end_leaves_the_earlier_one() throws Exception {
        Path clean = Files.writeString(folder.resolve("clean.mid"), "an earlier one");
        Files.createDirectory(folder.resolve("clean.mid.unfinished"));
        assertRefused("cannot be written", "take", take, "--clean", clean.toString());
        assertEquals("an earlier one", Files.readString(clean));
    }
}
