package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.store.BackupFolder;
import rosinbook.store.Database;
import rosinbook.store.DatabaseSheetStore;

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
    void licences_lists_the_libraries_and_has_the_whole_bill_of_materials() throws Exception {
        Outcome listed = run("licences");
        assertEquals(0, listed.status(), listed.err());
        assertTrue(listed.out().contains("(Apache-2.0) Javalin (io.javalin:javalin:"), listed.out());
        Outcome whole = run("licences", "--sbom");
        assertEquals(
                "CycloneDX",
                Answers.JSON.readTree(whole.out()).path("bomFormat").asText());
    }

    @Test
    void a_log_of_no_known_form_is_refused() {
        Outcome refused = run("serve", "--log", "loud", "--data", data("a"));
        assertEquals(2, refused.status());
        assertTrue(refused.err().contains("--log is loud; say json or plain"), refused.err());
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
            sets = new Notebook(DatabaseSheetStore.of(database, DatabaseSheetStore.ONLY_NOTEBOOK), Clock.systemUTC())
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
    void what_only_reads_a_notebook_makes_none_where_there_is_none() throws Exception {
        Path zip = Files.writeString(folder.resolve("season.zip"), "an earlier good one");
        String set = UUID.randomUUID().toString();
        for (List<String> command : List.of(
                List.of("backup", zip.toString()),
                List.of("export", zip.toString()),
                List.of("verify"),
                List.of("compare", set, set))) {
            List<String> arguments = new ArrayList<>(command);
            arguments.addAll(List.of("--data", data("nowhere")));
            Outcome refused = run(arguments.toArray(String[]::new));
            assertEquals(2, refused.status(), command::toString);
            assertEquals(
                    command.get(0) + ": there is no notebook in " + data("nowhere") + "; name it with --data",
                    refused.err().strip());
            assertFalse(Files.exists(folder.resolve("nowhere")));
        }
        assertEquals("an earlier good one", Files.readString(zip));
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(List.of(zip), left.toList());
        }
    }

    @Test
    void a_place_that_cannot_be_written_is_told_in_a_sentence() throws Exception {
        Database.inFolder(Path.of(data("a"))).close();
        Outcome nowhere = run("export", "--data", data("a"), data("nowhere/season.zip"));
        assertEquals(2, nowhere.status());
        assertEquals(
                "export: the folder " + data("nowhere") + " is not there; make it first",
                nowhere.err().strip());
        Outcome onFolder = run("backup", "--data", data("a"), folder.toString());
        assertEquals(2, onFolder.status());
        assertEquals(
                "backup: " + folder + " is a folder; name a file in it",
                onFolder.err().strip());
        Outcome fromFolder = run("import", "--data", data("a"), folder.toString());
        assertEquals(2, fromFolder.status());
        assertEquals(
                "import: a file cannot be read or written: Is a directory",
                fromFolder.err().strip());
    }

    @Test
    void a_set_that_is_not_there_is_told_in_a_sentence() {
        Database.inFolder(Path.of(data("a"))).close();
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

    @Test
    void a_backup_without_a_name_is_named_by_the_time_that_the_running_service_gave_it() throws Exception {
        Path named = Path.of("rosinbook-2001-11-12-200000-000Z.zip");
        Clock wrong = Clock.fixed(Instant.parse("2001-11-12T20:00:00Z"), ZoneOffset.UTC);
        try (Database database = Database.inFolder(Path.of(data("a")));
                RunningService service = RunningService.open(Path.of(data("a")), database, wrong)) {
            Outcome backup = run("backup", "--data", data("a"));
            assertEquals(0, backup.status(), backup.err() + service);
            assertTrue(backup.out().contains(named.toString()), backup.out());
            assertTrue(
                    new BackupFolder(Path.of(""))
                            .list().stream().anyMatch(kept -> kept.name().equals(named.toString())),
                    "it is known by its name in a folder of backups");
        } finally {
            Files.deleteIfExists(named);
        }
    }

    @Test
    void a_passphrase_in_another_encoding_is_refused_and_none_is_set() {
        InputStream before = System.in;
        try {
            System.setIn(new ByteArrayInputStream("B\u00f6gen und Saiten\n".getBytes(StandardCharsets.ISO_8859_1)));
            Outcome refused = run("passphrase", "--data", data("a"));
            assertEquals(2, refused.status(), refused.out());
            assertTrue(refused.err().contains("letters that are not in UTF-8"), refused.err());
            assertFalse(Files.exists(folder.resolve("a")));
            System.setIn(new ByteArrayInputStream("B\u00f6gen und Saiten\n".getBytes(StandardCharsets.UTF_8)));
            assertEquals(0, run("passphrase", "--data", data("a")).status());
        } finally {
            System.setIn(before);
        }
    }
}
