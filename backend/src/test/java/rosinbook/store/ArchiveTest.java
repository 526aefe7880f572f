package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.UnreadableRevision;
import rosinbook.testing.TestDatabase;

/** Archives that are not as they should be: each is refused with a reason, and nothing is added. */
class ArchiveTest {
    private TestDatabase database;
    private Archive archive;
    private Map<String, String> good;
    private String name;

    @BeforeEach
    void exportOnePiece() throws IOException {
        try (TestDatabase held = TestDatabase.fresh()) {
            Database source = held.database();
            Clock clock = Clock.systemUTC();
            Notebook notebook = new Notebook(DatabaseSheetStore.onlyNotebook(source, clock.instant()), clock);
            notebook.create(
                    Kind.PIECES,
                    UUID.randomUUID(),
                    ContentJson.parse("{\"title\":\"One\"}".getBytes(StandardCharsets.UTF_8)),
                    new Notebook.Note("", ""),
                    Optional.empty());
            ByteArrayOutputStream zip = new ByteArrayOutputStream();
            new Archive(source, DatabaseSheetStore.ONLY_NOTEBOOK).export(zip);
            good = new TreeMap<>(Zips.contents(zip.toByteArray()));
        }
        name = good.keySet().stream()
                .filter(key -> key.startsWith("sheets/"))
                .findFirst()
                .orElseThrow();
        database = TestDatabase.fresh();
        DatabaseSheetStore.onlyNotebook(database.database(), Clock.systemUTC().instant());
        archive = new Archive(database.database(), DatabaseSheetStore.ONLY_NOTEBOOK);
    }

    @AfterEach
    void close() {
        database.close();
    }

    private void assertRefused(byte[] zip, String reason) {
        var problem = assertThrows(ArchiveUnreadable.class, () -> archive.read(new ByteArrayInputStream(zip)));
        assertTrue(problem.getMessage().contains(reason), problem.getMessage());
        assertEquals(0, archive.verify().revisions(), "nothing was added");
    }

    @Test
    void the_archive_as_written_is_read() throws IOException {
        assertEquals(new Archive.Imported(1, 0), archive.read(new ByteArrayInputStream(Zips.zip(good))));
    }

    @Test
    void what_is_no_zip_is_refused() {
        assertRefused("hello".getBytes(StandardCharsets.UTF_8), "not a ZIP");
    }

    @Test
    void a_zip_of_something_else_is_refused() throws IOException {
        assertRefused(Zips.zip(Map.of("readme.txt", "hi")), "does not belong");
        good.remove("rosinbook.json");
        assertRefused(Zips.zip(good), "rosinbook.json is missing");
    }

    @Test
    void a_name_that_climbs_out_is_refused() throws IOException {
        good.put("../evil.json", "{}");
        assertRefused(Zips.zip(good), "does not belong");
    }

    @Test
    void a_changed_content_is_refused() throws IOException {
        good.computeIfPresent(name, (key, text) -> text.replace("One", "Two"));
        assertRefused(Zips.zip(good), "does not match its checksum");
    }

    @Test
    void a_missing_revision_is_refused() throws IOException {
        String moved = name.replace("r0001", "r0002");
        good.put(moved, good.remove(name).replace("\"revision\" : 1", "\"revision\" : 2"));
        assertRefused(Zips.zip(good), "revision 1 before");
    }

    @Test
    void an_entry_that_unpacks_to_too_much_is_refused() throws IOException {
        good.put(name, " ".repeat(Archive.MAX_ENTRY_BYTES + 1));
        var problem = assertThrows(PastLimit.class, () -> archive.read(new ByteArrayInputStream(Zips.zip(good))));
        assertEquals(Limit.ARCHIVE_ENTRY_BYTES, problem.limit());
    }

    @Test
    void a_zip_cut_short_is_refused() throws IOException {
        byte[] zip = Zips.zip(good);
        assertRefused(java.util.Arrays.copyOf(zip, zip.length / 2), "not a ZIP");
    }

    @Test
    void a_moment_that_not_both_databases_keep_as_it_is_is_refused() throws IOException {
        String file = good.get(name);
        for (String moment :
                new String[] {"-4800-01-01T00:00:00Z", "+10000-01-01T00:00:00Z", "2026-11-12T20:00:00.123456789Z"}) {
            good.put(name, file.replaceAll("\"savedAt\" : \"[^\"]+\"", "\"savedAt\" : \"" + moment + "\""));
            assertRefused(Zips.zip(good), "is not a revision of a Rosinbook archive");
        }
    }

    @Test
    void revisions_are_read_in_the_order_of_their_numbers_however_many_digits_these_have() throws IOException {
        archive.read(new ByteArrayInputStream(Zips.zip(good)));
        Damage.execute(database.database(), "UPDATE sheet SET head_number = 9998");
        Map<String, String> more = new TreeMap<>(Map.of("rosinbook.json", good.get("rosinbook.json")));
        for (int number : new int[] {9999, 10_000}) {
            more.put(
                    name.replace("r0001", "r" + number),
                    good.get(name).replace("\"revision\" : 1", "\"revision\" : " + number));
        }
        assertEquals(new Archive.Imported(2, 0), archive.read(new ByteArrayInputStream(Zips.zip(more))));
    }

    @Test
    void a_temporary_folder_that_cannot_be_written_is_told_as_such() {
        String before = System.getProperty("java.io.tmpdir");
        System.setProperty("java.io.tmpdir", "target/no/such/folder");
        try {
            var problem = assertThrows(CannotWrite.class, () -> archive.read(new ByteArrayInputStream(Zips.zip(good))));
            assertEquals(CannotWrite.Reason.READ_ONLY, problem.reason());
            assertTrue(problem.getMessage().contains("temporary files"), problem.getMessage());
        } finally {
            System.setProperty("java.io.tmpdir", before);
        }
    }

    @Test
    void a_sheet_that_lost_all_its_revisions_is_a_damage() throws IOException {
        archive.read(new ByteArrayInputStream(Zips.zip(good)));
        assertEquals(List.of(), archive.verify().damages());
        Damage.execute(database.database(), "DELETE FROM revision");
        assertEquals(
                List.of("pieces " + name.split("/")[2] + ": all its revisions are missing"),
                archive.verify().damages());
    }

    @Test
    void a_table_that_cannot_be_read_is_a_damage() throws IOException {
        archive.read(new ByteArrayInputStream(Zips.zip(good)));
        assertEquals(List.of(), Archive.verifyEach(database.database()).damages());
        Damage.execute(database.database(), "ALTER TABLE notebook RENAME TO notebook_of_before");
        assertEquals(
                List.of("something in it cannot be read, so the rest was not checked"),
                Archive.verifyEach(database.database()).damages());
    }

    @Test
    void a_row_that_cannot_be_read_is_a_damage() throws IOException {
        archive.read(new ByteArrayInputStream(Zips.zip(good)));
        Damage.execute(database.database(), "ALTER TABLE sheet ALTER COLUMN title DROP NOT NULL");
        Damage.execute(database.database(), "UPDATE sheet SET title = NULL");
        assertEquals(
                List.of("something in it cannot be read, so the rest was not checked"),
                archive.verify().damages());
    }

    @Test
    void a_file_that_does_not_match_its_name_is_refused() throws IOException {
        good.put("blobs/" + "0".repeat(64), "not what it says");
        assertRefused(Zips.zip(good), "does not match its checksum");
    }

    @Test
    void a_take_without_its_file_is_refused() throws IOException {
        try (TestDatabase held = TestDatabase.fresh()) {
            Database source = held.database();
            Clock clock = Clock.systemUTC();
            Notebook notebook = new Notebook(DatabaseSheetStore.onlyNotebook(source, clock.instant()), clock);
            var blob = notebook.keep("a file".getBytes(StandardCharsets.UTF_8));
            String take = "{\"title\":\"One\",\"midi\":{\"sha256\":\"" + blob.sha256() + "\",\"size\":6}}";
            notebook.create(
                    Kind.TAKES,
                    UUID.randomUUID(),
                    ContentJson.parse(take.getBytes(StandardCharsets.UTF_8)),
                    new Notebook.Note("", ""),
                    Optional.empty());
            ByteArrayOutputStream zip = new ByteArrayOutputStream();
            new Archive(source, DatabaseSheetStore.ONLY_NOTEBOOK).export(zip);
            Map<String, String> whole = Zips.contents(zip.toByteArray());
            whole.keySet().removeIf(key -> key.startsWith("blobs/"));
            assertRefused(Zips.zip(whole), "names a file that is in neither place");
        }
    }

    @Test
    void a_content_as_long_as_one_may_be_is_read_again_and_a_longer_one_is_refused() throws IOException {
        assertRefused(Zips.zip(ofLength(ContentJson.MAX_BYTES + 1)), "its content is 900001 bytes long");
        assertEquals(
                new Archive.Imported(2, 0),
                archive.read(new ByteArrayInputStream(Zips.zip(ofLength(ContentJson.MAX_BYTES)))));
        ByteArrayOutputStream again = new ByteArrayOutputStream();
        archive.export(again);
        assertEquals(3, Zips.contents(again.toByteArray()).size(), "the cover, the piece and the set");
    }

    /** The archive with one set whose canonical content has so many bytes. */
    private Map<String, String> ofLength(int bytes) {
        StringBuilder items = new StringBuilder();
        for (int item = 10; item < 60; item++) {
            items.append(item == 10 ? "" : ",")
                    .append("\"" + item + "\":{\"note\":\"" + "x".repeat(item == 10 ? 0 : 18_000) + "\",\"order\":"
                            + item)
                    .append(",\"piece\":\"" + name.split("/")[2] + "\"}");
        }
        String content = "{\"date\":\"2026-11-12\",\"items\":{" + items + "},\"title\":\"One\"}";
        content = content.replace("\"note\":\"\"", "\"note\":\"" + "x".repeat(bytes - content.length()) + "\"");
        UUID id = UUID.randomUUID();
        String entry = "{\"format\":1,\"id\":\"" + id + "\",\"kind\":\"setlists\",\"revision\":1,"
                + "\"savedAt\":\"2026-11-12T20:00:00Z\",\"savedBy\":\"\",\"reason\":\"\",\"sha256\":\""
                + ContentJson.sha256(content) + "\",\"content\":" + content + "}";
        Map<String, String> more = new TreeMap<>(good);
        more.put("sheets/setlists/" + id + "/r0001.json", entry);
        return more;
    }

    @Test
    void a_sheet_of_a_kind_that_there_is_not_is_a_damage() throws IOException {
        archive.read(new ByteArrayInputStream(Zips.zip(good)));
        Damage.execute(database.database(), "UPDATE sheet SET kind = 'pianos'");
        assertEquals(
                List.of("pianos " + name.split("/")[2] + ": there is no such kind of sheet"),
                archive.verify().damages());
    }

    @Test
    void a_revision_that_cannot_be_read_is_told_by_its_sheet_and_its_number() throws IOException {
        archive.read(new ByteArrayInputStream(Zips.zip(good)));
        for (String damaged : List.of("{", "[]", "{\"title\":\"One\",\"title\":\"Two\"}")) {
            Damage.execute(database.database(), "UPDATE revision SET content = '" + damaged + "'");
            var problem = assertThrows(UnreadableRevision.class, () -> archive.export(new ByteArrayOutputStream()));
            assertTrue(
                    problem.getMessage()
                            .startsWith("revision 1 of sheet " + name.split("/")[2] + " is damaged and cannot be read"),
                    problem.getMessage());
            assertEquals(1, archive.verify().damages().size(), damaged);
        }
    }
}
