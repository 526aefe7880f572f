package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Collections;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
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
    void a_rig_of_an_exported_notebook_is_checked_by_its_id_and_revision() {
        String zip = folder.resolve("season.zip").toString();
        run("example", "--data", data("a"));
        run("export", "--data", data("a"), zip);
        Outcome which = run("wiring", zip);
        assertEquals(2, which.status());
        assertTrue(which.err().contains("holds 2 rigs; say which with --rig"), which.err());
        Matcher listed = Pattern.compile("([0-9a-f-]{36}) \\(Green violin").matcher(which.err());
        assertTrue(listed.find(), which.err());
        String rig = listed.group(1);

        Outcome newest = run("wiring", zip, "--rig", rig, "--json");
        assertEquals(0, newest.status(), newest.err());
        assertTrue(newest.out().contains("\"readyToSolder\" : true"), newest.out());
        Outcome first = run("wiring", zip, "--rig", rig + "@1");
        assertTrue(first.out().contains("no pin is known to carry it"), "its first revision had no pin for string 4");
        assertFalse(newest.out().contains("no pin is known to carry it"));

        assertTrue(run("wiring", zip, "--rig", rig + "@99").err().contains("There is no rig"));
        assertTrue(run("wiring", zip, "--rig", "last-week").err().contains("is no rig"));
        assertTrue(run("wiring", "src/test/resources/wiring/violin.json", "--rig", rig)
                .err()
                .contains("is no archive"));
    }

    @Test
    void a_damaged_revision_in_an_archive_is_told_and_not_believed() throws Exception {
        Path zip = folder.resolve("season.zip");
        run("example", "--data", data("a"));
        run("export", "--data", data("a"), zip.toString());
        Path damaged = folder.resolve("damaged.zip");
        String rig = "";
        try (ZipFile from = new ZipFile(zip.toFile());
                ZipOutputStream to = new ZipOutputStream(Files.newOutputStream(damaged))) {
            for (ZipEntry entry : Collections.list(from.entries())) {
                String text = new String(from.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
                if (entry.getName().startsWith("sheets/rigs/") && text.contains("Green violin")) {
                    rig = entry.getName().split("/")[2];
                    text = text.replace("\"instrumentPin\" : \"5\"", "\"instrumentPin\" : \"4\"");
                }
                to.putNextEntry(new ZipEntry(entry.getName()));
                to.write(text.getBytes(StandardCharsets.UTF_8));
                to.closeEntry();
            }
        }
        Outcome outcome = run("wiring", damaged.toString(), "--rig", rig);
        assertEquals(2, outcome.status());
        assertTrue(outcome.err().contains("does not match its checksum"), outcome.err());
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
