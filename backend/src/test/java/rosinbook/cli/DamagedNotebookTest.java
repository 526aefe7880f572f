package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.example.ExampleSeason;
import rosinbook.store.BackupFolder;
import rosinbook.store.Backups;
import rosinbook.store.Damage;
import rosinbook.store.Database;
import rosinbook.store.DatabaseSheetStore;

/** What is said about a notebook whose file was damaged, and whether what is said helps. */
class DamagedNotebookTest {
    @TempDir
    private Path folder;

    private Path data;
    private Path file;
    private byte[] whole;
    private String backup;

    private record Outcome(int status, String out, String err) {}

    private static Outcome run(String... arguments) {
        StringWriter err = new StringWriter();
        PrintStream before = System.out;
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
        try {
            int status = Main.commandLine().setErr(new PrintWriter(err, true)).execute(arguments);
            return new Outcome(status, out.toString(StandardCharsets.UTF_8), err.toString());
        } finally {
            System.setOut(before);
        }
    }

    @BeforeEach
    void write() throws IOException {
        data = folder.resolve("my data");
        file = data.resolve("rosinbook.mv.db");
        try (Database database = Database.inFolder(data)) {
            ExampleSeason.writeInto(
                    DatabaseSheetStore.onlyNotebook(database, Clock.systemUTC().instant()), LocalDate.of(2026, 11, 19));
            backup = new Backups(database, new BackupFolder(data.resolve("backups")), Clock.systemUTC())
                    .make()
                    .name();
        }
        whole = Files.readAllBytes(file);
    }

    private Outcome assertTold(byte[] bytes, String how) throws IOException {
        Files.write(file, bytes);
        Outcome outcome = assertTimeoutPreemptively(
                Duration.ofSeconds(60), () -> run("serve", "--port", "0", "--data", data.toString()));
        assertEquals(2, outcome.status);
        assertTrue(outcome.err.contains(file.toString()) && outcome.err.contains(how), outcome.err);
        assertTrue(
                outcome.err.contains(
                        "The newest whole backup is " + data.resolve("backups").resolve(backup)),
                outcome.err);
        assertFalse(outcome.err.contains("\tat "), outcome.err);
        assertEquals(bytes.length, Files.size(file), "it is left as it is");
        return outcome;
    }

    @Test
    void an_empty_file_a_cut_one_garbage_and_a_single_flipped_bit_are_each_told() throws IOException {
        assertTold(new byte[0], "is empty");
        assertTold(Arrays.copyOf(whole, whole.length / 2), "not as it was left");
        byte[] garbage = new byte[whole.length];
        new Random(1).nextBytes(garbage);
        assertTold(garbage, "not as it was left");
        Random random = new Random(8017);
        for (int round = 0; round < 8; round++) {
            byte[] flipped = whole.clone();
            flipped[random.nextInt(whole.length)] ^= (byte) (1 << random.nextInt(8));
            assertTold(flipped, "not as it was left");
        }
        Files.delete(file);
        assertTrue(run("verify", "--data", data.toString()).err.contains("is missing"));
    }

    /** As after a power cut, when nothing says how the file was left. */
    @Test
    void without_a_seal_damage_is_told_or_does_no_harm_but_never_ends_in_a_stack_trace() throws IOException {
        Random random = new Random(8017);
        int told = 0;
        for (int round = 0; round < 24; round++) {
            byte[] damaged = whole.clone();
            if (round % 4 == 0) {
                int from = random.nextInt(whole.length - 5000);
                Arrays.fill(damaged, from, from + 5000, (byte) random.nextInt());
            } else if (round % 4 == 1) {
                damaged = Arrays.copyOf(whole, random.nextInt(whole.length));
            } else {
                damaged[random.nextInt(whole.length)] ^= (byte) (1 << random.nextInt(8));
            }
            Files.delete(file); // of one that H2 could not open it may keep the lock until its memory is cleared
            Files.write(file, damaged);
            Files.deleteIfExists(data.resolve("rosinbook.seal"));
            Outcome outcome = run("verify", "--data", data.toString());
            assertFalse((outcome.err + outcome.out).contains("\tat "), outcome.err);
            if (outcome.status == 2) {
                told++;
                assertTrue(
                        outcome.err.contains("The newest whole backup is"),
                        "round " + round + " of " + whole.length + " bytes: " + outcome.err);
            }
        }
        assertTrue(told > 0, "some of it should be noticed");
    }

    @Test
    void what_the_sentence_says_brings_the_notebook_back_and_keeps_the_damaged_file() throws IOException {
        String before = export();
        byte[] garbage = "not a notebook".getBytes(StandardCharsets.UTF_8);
        String told = assertTold(garbage, "not as it was left").err;
        Matcher move = Pattern.compile("\n  mv '(.*)' '(.*)'\r?\n").matcher(told);
        Matcher restore =
                Pattern.compile("\n  rosinbook restore '(.*)' --data '(.*)'").matcher(told);
        assertTrue(move.find() && restore.find(), told);
        Outcome early = run("restore", restore.group(1), "--data", restore.group(2));
        assertTrue(early.status == 2, "the backup is not there yet: " + early);

        Files.move(Path.of(move.group(1)), Path.of(move.group(2)));
        Outcome restored = run("restore", restore.group(1), "--data", restore.group(2));
        assertEquals(0, restored.status, restored.err);
        assertTrue(restored.out.contains("every revision matches its checksum"), restored.out);
        assertEquals(before, export());
        assertEquals("not a notebook", Files.readString(Path.of(move.group(2)).resolve("rosinbook.mv.db")));
    }

    /** Every revision with its hash. */
    private String export() throws IOException {
        Path zip = folder.resolve("export.zip");
        assertEquals(0, run("export", "--data", data.toString(), zip.toString()).status);
        StringBuilder text = new StringBuilder();
        try (var contents = new java.util.zip.ZipFile(zip.toFile())) {
            for (var entry : java.util.Collections.list(contents.entries())) {
                text.append(entry.getName())
                        .append(new String(contents.getInputStream(entry).readAllBytes(), StandardCharsets.ISO_8859_1));
            }
        }
        return text.toString();
    }

    @Test
    void a_damaged_backup_is_passed_over_and_without_any_it_says_so() throws IOException {
        Path newer = data.resolve("backups").resolve("rosinbook-2999-01-01-000000-000Z.zip");
        Files.write(
                newer, Arrays.copyOf(Files.readAllBytes(data.resolve("backups").resolve(backup)), 4000));
        assertTold(new byte[0], "is empty");
        Files.delete(data.resolve("backups").resolve(backup));
        Outcome outcome = run("verify", "--data", data.toString());
        assertTrue(outcome.err.contains("No whole backup was found in " + data.resolve("backups")), outcome.err);
    }

    @Test
    void a_damaged_revision_is_told_in_a_sentence() {
        try (Database database = Database.inFolder(data)) {
            Damage.execute(database, "UPDATE revision SET content = '{' WHERE revision_number = 1");
        }
        Outcome outcome = run(
                "export",
                "--data",
                data.toString(),
                folder.resolve("export.zip").toString());
        assertEquals(2, outcome.status, outcome.err);
        assertTrue(outcome.err.contains("is damaged and cannot be read"), outcome.err);
        assertFalse(outcome.err.contains("\tat "), outcome.err);
    }

    @Test
    void restore_goes_only_into_an_empty_folder() throws IOException {
        Files.write(file, new byte[0]);
        Outcome outcome = run("restore", data.resolve("backups").resolve(backup).toString(), "--data", data.toString());
        assertEquals(2, outcome.status);
        assertTrue(outcome.err.contains("rename that folder"), outcome.err);
        assertEquals(0, Files.size(file));
    }
}
