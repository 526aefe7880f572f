package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.example.ExampleSeason;

/** Files that are no whole backup, and places that are not empty: each is refused in a sentence, and nothing is left behind. */
class RestoreTest {
    private static final Instant NOW = Instant.parse("2026-11-12T20:00:00Z");

    @TempDir
    private Path folder;

    private Path good;
    private Map<String, String> parts;

    @BeforeEach
    void backUpTheExample() throws IOException {
        good = folder.resolve("good.zip");
        try (Database database = Database.inMemory("restore-" + folder.getFileName())) {
            ExampleSeason.writeInto(DatabaseSheetStore.onlyNotebook(database, NOW), LocalDate.of(2026, 11, 19));
            new BackupWriter(database).writeChecked(good, NOW);
        }
        parts = new TreeMap<>(Zips.contents(Files.readAllBytes(good)));
    }

    private Path target() {
        return folder.resolve("target");
    }

    private void assertRefused(byte[] bytes, String reason) throws IOException {
        Path file = folder.resolve("bad.zip");
        Files.write(file, bytes);
        var problem = assertThrows(BackupUnreadable.class, () -> Restore.intoFolder(file, target()));
        assertTrue(problem.getMessage().contains(reason), problem.getMessage());
        assertNothingLeft();
    }

    private void assertNothingLeft() throws IOException {
        if (Files.exists(target())) {
            try (Stream<Path> left = Files.list(target())) {
                assertEquals(
                        List.of(),
                        left.filter(each -> !each.endsWith("rosinbook.lock")).toList());
            }
        }
    }

    private void assertRefused(String reason) throws IOException {
        assertRefused(Zips.zip(parts), reason);
    }

    private void change(String name, String was, String now) {
        String before = parts.get(name);
        assertTrue(before.contains(was), before);
        parts.put(name, before.replaceFirst(java.util.regex.Pattern.quote(was), now));
    }

    /** As somebody would who edits a part and knows about checksums. */
    private void forgive(String part) {
        parts.computeIfPresent(
                BackupCover.ENTRY,
                (name, cover) -> cover.replaceAll(
                        "(\"table\" : \"" + part + "\",\\s*\"rows\" : )\\d+(,\\s*\"sha256\" : \")[0-9a-f]+",
                        "$1" + parts.get("tables/" + part + ".jsonl").lines().count() + "$2"
                                + rosinbook.notebook.ContentJson.sha256(parts.get("tables/" + part + ".jsonl"))));
    }

    @Test
    void a_whole_one_is_restored_and_only_its_user_can_read_it() throws IOException {
        Restore.Restored restored = Restore.intoFolder(good, target());
        assertEquals(List.of(), restored.damages());
        assertEquals(
                restored.cover().rows(),
                parts.entrySet().stream()
                        .filter(part -> !part.getKey().equals(BackupCover.ENTRY))
                        .mapToLong(part -> part.getValue().lines().count())
                        .sum());
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(good)));
    }

    @Test
    void what_is_no_zip_is_refused() throws IOException {
        assertRefused("hello".getBytes(StandardCharsets.UTF_8), "not a ZIP");
        assertRefused(new byte[0], "not a ZIP");
    }

    @Test
    void a_missing_file_is_told() {
        var problem =
                assertThrows(BackupUnreadable.class, () -> Restore.intoFolder(folder.resolve("nowhere.zip"), target()));
        assertTrue(problem.getMessage().contains("cannot be read; check its name"));
    }

    @Test
    void a_zip_of_something_else_and_an_archive_are_told_apart() throws IOException {
        assertRefused(Zips.zip(Map.of("readme.txt", "hi")), "is no backup of a Rosinbook");
        assertRefused(Zips.zip(Map.of("rosinbook.json", "{}")), "read it with: rosinbook import");
    }

    @Test
    void one_that_was_cut_short_is_refused_wherever_the_cut_is() throws IOException {
        byte[] bytes = Files.readAllBytes(good);
        for (int length : new int[] {1, bytes.length / 3, bytes.length / 2, bytes.length - 1}) {
            assertRefused(Arrays.copyOf(bytes, length), "not a ZIP");
        }
    }

    @Test
    void a_flipped_bit_never_restores_something_else() throws IOException {
        byte[] bytes = Files.readAllBytes(good);
        List<String> whole;
        try (BackupFile backup = BackupFile.open(good)) {
            whole = linesOf(backup);
        }
        Random random = new Random(8017);
        int refused = 0;
        for (int round = 0; round < 300; round++) {
            byte[] flipped = bytes.clone();
            flipped[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
            Path file = folder.resolve("flipped.zip");
            Files.write(file, flipped);
            try (BackupFile backup = BackupFile.open(file)) {
                backup.check();
                assertEquals(whole, linesOf(backup), "round " + round);
            } catch (BackupUnreadable told) {
                refused++;
            }
        }
        assertTrue(refused > 250, "most flips are noticed, the others change nothing that is read: " + refused);
    }

    private static List<String> linesOf(BackupFile backup) throws IOException {
        List<String> lines = new ArrayList<>();
        for (BackupCover.Part part : backup.cover().parts()) {
            lines.add(part.table());
            lines.addAll(new String(backup.part(part).readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList());
        }
        return lines;
    }

    @Test
    void a_changed_row_is_refused_and_so_is_a_part_too_few_or_too_many() throws IOException {
        change("tables/sheet.jsonl", "Green violin", "Grey violin");
        assertRefused("tables/sheet.jsonl is not as it was written");
        parts = new TreeMap<>(Zips.contents(Files.readAllBytes(good)));
        parts.put("tables/more.jsonl", "{}");
        assertRefused("do not belong");
        parts.remove("tables/more.jsonl");
        parts.remove("tables/share.jsonl");
        assertRefused("parts are missing");
    }

    @Test
    void one_of_a_newer_rosinbook_is_told() throws IOException {
        change(BackupCover.ENTRY, "\"format\" : 1", "\"format\" : 2");
        assertRefused("newer Rosinbook");
        parts = new TreeMap<>(Zips.contents(Files.readAllBytes(good)));
        change(BackupCover.ENTRY, "\"schema\" : \"", "\"schema\" : \"9");
        assertRefused("newer Rosinbook");
    }

    @Test
    void rows_that_do_not_fit_are_refused_even_with_right_checksums() throws IOException {
        change("tables/sheet.jsonl", "\"played\":", "\"payed\":");
        forgive("sheet");
        assertRefused("rows of sheet are of another shape");
        parts = new TreeMap<>(Zips.contents(Files.readAllBytes(good)));
        change("tables/sheet.jsonl", "\"head_number\":", "\"head_number\":\"x\",\"x\":");
        forgive("sheet");
        assertRefused("of another shape");
        parts = new TreeMap<>(Zips.contents(Files.readAllBytes(good)));
        parts.put("tables/sheet.jsonl", "");
        forgive("sheet");
        assertRefused("contradicts itself");
    }

    @Test
    void a_folder_that_is_not_empty_is_left_alone() throws IOException {
        Files.createDirectories(target());
        Files.writeString(target().resolve("mine.txt"), "mine");
        var problem = assertThrows(IllegalArgumentException.class, () -> Restore.intoFolder(good, target()));
        assertTrue(problem.getMessage().contains("only into an empty one"), problem.getMessage());
        assertEquals("mine", Files.readString(target().resolve("mine.txt")));
    }

    @Test
    void an_attempt_that_was_broken_off_is_no_obstacle() throws IOException {
        Files.createDirectories(target());
        Files.writeString(target().resolve("rosinbook.lock"), "");
        Files.writeString(target().resolve("rosinbook.new.mv.db"), "half");
        assertEquals(List.of(), Restore.intoFolder(good, target()).damages());
    }

    @Test
    void one_whose_cover_breaks_off_is_told_as_damaged() throws IOException {
        ForgedZip zip = new ForgedZip();
        ForgedZip.Entry cover = zip.add(BackupCover.ENTRY, parts.get(BackupCover.ENTRY));
        cover.packed = Arrays.copyOf(cover.packed, cover.packed.length / 2);
        cover.packedSize = cover.packed.length;
        assertRefused(zip.bytes(), "is damaged: its cover cannot be read");
    }
}
