package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Pages;
import rosinbook.store.Database;

class CommandsTest {
    @TempDir
    private Path folder;

    private record Outcome(int status, String out, String err) {}

    private static Outcome run(String... arguments) {
        StringWriter err = new StringWriter();
        PrintStream before = System.out;
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
        try {
            CommandLine commands =
                    Main.commandLine().setErr(new PrintWriter(err, true)).setOut(new PrintWriter(System.out, true));
            int status = commands.execute(arguments);
            return new Outcome(status, out.toString(StandardCharsets.UTF_8), err.toString());
        } finally {
            System.setOut(before);
        }
    }

    private String data(String name) {
        return folder.resolve(name).toString();
    }

    @Test
    void example_then_export_import_and_verify_carry_a_notebook_elsewhere() {
        String zip = folder.resolve("season.zip").toString();
        assertEquals(0, run("example", "--data", data("a")).status());
        assertEquals(0, run("export", "--data", data("a"), zip).status());
        Outcome imported = run("import", "--data", data("b"), zip);
        assertEquals(0, imported.status(), imported.err());
        Outcome again = run("import", "--data", data("b"), zip);
        assertTrue(again.out().startsWith("Added 0 revisions"), again.out());
        Outcome verified = run("verify", "--data", data("b"));
        assertEquals(0, verified.status());
        assertTrue(verified.out().contains("all whole"), verified.out());
    }

    @Test
    void example_refuses_a_notebook_that_somebody_writes_in() {
        run("example", "--data", data("a"));
        Outcome again = run("example", "--data", data("a"));
        assertEquals(2, again.status());
        assertTrue(again.err().contains("only into an empty one"), again.err());
    }

    @Test
    void compare_tells_what_changed_between_the_last_two_sets() {
        run("example", "--data", data("a"));
        String[] sets;
        try (Database database = Database.inFolder(Path.of(data("a")))) {
            sets = DatabaseOptions.notebook(database, Clock.systemUTC())
                    .look(pages -> pages.list(new Pages.Query(
                            java.util.Optional.of(Kind.SETLISTS),
                            "",
                            java.util.Optional.empty(),
                            java.util.Optional.empty(),
                            2)))
                    .items()
                    .stream()
                    .map(set -> set.sheetId().toString())
                    .toArray(String[]::new);
        }
        Outcome told = run("compare", "--data", data("a"), sets[1], sets[0]);
        assertEquals(0, told.status(), told.err());
        assertTrue(told.out().startsWith("2 new in the set, 1 left out, 1 moved"), told.out());
        assertTrue(told.out().contains("String 1, sensitivity: 15 → 17 (+2)"), told.out());
        Outcome json = run("compare", "--json", "--data", data("a"), sets[1], sets[0]);
        assertTrue(json.out().contains("\"difference\":\"+2\""), json.out());
    }

    @Test
    void a_set_that_is_not_there_is_told_in_a_sentence() {
        Outcome outcome = run("compare", "--data", data("a"), "last-week", "tonight");
        assertEquals(2, outcome.status());
        assertEquals(
                "compare: 'last-week' is no set; give its id, or id@revision",
                outcome.err().strip());
    }

    @Test
    void import_of_what_is_no_archive_is_told_in_a_sentence_and_adds_nothing() throws Exception {
        Path file = folder.resolve("notes.zip");
        Files.writeString(file, "hello");
        Outcome outcome = run("import", "--data", data("a"), file.toString());
        assertEquals(2, outcome.status());
        assertTrue(outcome.err().contains("not a ZIP that can be read"), outcome.err());
        assertTrue(run("verify", "--data", data("a")).out().startsWith("0 revisions"));
    }

    @Test
    void every_command_explains_itself() {
        for (String name : Main.commandLine().getSubcommands().keySet()) {
            Outcome help = run(name, "--help");
            assertEquals(0, help.status(), name);
            assertTrue(help.out().contains("Usage: rosinbook " + name), help.out());
        }
    }
}
