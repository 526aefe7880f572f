package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import org.jooq.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.access.Player;
import rosinbook.access.PlayerName;
import rosinbook.access.Session;
import rosinbook.example.ExampleSeason;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.share.Share;

/** What a backup carries from one place to another, on whichever database. */
abstract class BackupContract {
    static final Instant NOW = Instant.parse("2026-11-12T20:00:00.123456Z");

    @TempDir
    Path folder;

    private Database database;
    private Notebook notebook;

    /** A fresh, empty database. */
    abstract Database fresh();

    /** Restores into an empty place of this kind and opens it. */
    abstract Database restored(Path file) throws IOException;

    @BeforeEach
    void fill() {
        database = fresh();
        Clock clock = Clock.fixed(NOW, ZoneOffset.UTC);
        DatabaseSheetStore store = DatabaseSheetStore.onlyNotebook(database, NOW);
        ExampleSeason.writeInto(store, LocalDate.of(2026, 11, 19));
        notebook = new Notebook(store, clock);
        notebook.create(
                Kind.PIECES,
                UUID.randomUUID(),
                ContentJson.parse("{\"title\":\"Ælfric's 🎻 \\\"x\\\" \\u2028\"}".getBytes(StandardCharsets.UTF_8)),
                new Notebook.Note("Mira", "a line\nand another"),
                Optional.empty());
        UUID rig = notebook.look(pages ->
                        pages.list(new Pages.Query(Optional.of(Kind.RIGS), "", Optional.empty(), Optional.empty(), 1)))
                .items()
                .get(0)
                .sheetId();
        byte[] file = new byte[1_300_000];
        Arrays.setAll(new int[file.length], at -> file[at] = (byte) (at * 31 + at / 251));
        notebook.keep(file);
        DatabaseAccessStore players = new DatabaseAccessStore(database);
        Player keeper = new Player(UUID.randomUUID(), new PlayerName("Mira"), true, true);
        players.addKeeper(keeper, "$argon2id$x", NOW);
        players.begin(
                new Session(UUID.randomUUID(), keeper, Optional.empty(), NOW, NOW.plusSeconds(60)),
                "c".repeat(64),
                "$argon2id$x");
        Player invited = new Player(UUID.randomUUID(), new PlayerName("Jonas"), false, false);
        players.invite(invited, "b".repeat(64), NOW, NOW.plusSeconds(60));
        new DatabaseShareStore(database, DatabaseSheetStore.ONLY_NOTEBOOK)
                .add(
                        new Share(
                                UUID.randomUUID(),
                                "For Jonas",
                                Kind.RIGS,
                                rig,
                                Optional.of(1),
                                NOW,
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                0),
                        "a".repeat(64),
                        Set.of(new Reference(rig, 1)));
    }

    @AfterEach
    void close() {
        if (database != null) {
            database.close();
        }
    }

    /** The database with something in every table. */
    Database source() {
        return database;
    }

    Path backup(Database source, String name) throws IOException {
        Path file = folder.resolve(name);
        new BackupWriter(source).writeChecked(file, NOW);
        return file;
    }

    /** Every part's lines in an order of their own: the two databases sort differently. */
    static Map<String, List<String>> lines(Path file) throws IOException {
        Map<String, List<String>> lines = new TreeMap<>();
        Zips.contents(Files.readAllBytes(file)).forEach((name, text) -> {
            if (!name.equals(BackupCover.ENTRY)) {
                lines.put(name, text.lines().sorted().toList());
            }
        });
        return lines;
    }

    @Test
    void everything_comes_back_as_it_was_in_every_table() throws IOException {
        Path file = backup(database, "first.zip");
        try (Database other = restored(file)) {
            Map<String, List<String>> expected = lines(file);
            assertEquals(
                    1, expected.put("tables/sign_in_session.jsonl", List.of()).size());
            assertEquals(1, expected.put("tables/invitation.jsonl", List.of()).size());
            assertEquals(
                    expected,
                    lines(backup(other, "second.zip")),
                    "all but the sessions, which end, and invitations, of which one that was used must not open again");
            Archive archive = new Archive(other, DatabaseSheetStore.ONLY_NOTEBOOK);
            assertEquals(List.of(), archive.verify().damages());
            assertArrayEquals(export(database), export(other), "every revision with its hash");
        }
    }

    private static byte[] export(Database source) throws IOException {
        ByteArrayOutputStream zip = new ByteArrayOutputStream();
        new Archive(source, DatabaseSheetStore.ONLY_NOTEBOOK).export(zip);
        return String.join(
                        "\n",
                        Zips.contents(zip.toByteArray()).entrySet().stream()
                                .map(Object::toString)
                                .toList())
                .getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void every_table_of_the_schema_is_in_it_and_has_rows_here() throws IOException {
        Path file = backup(database, "first.zip");
        Set<String> tables = Set.copyOf(database.look(sql ->
                StoredTables.inOrder(sql).stream().map(StoredTables::name).toList()));
        assertEquals(
                rosinbook.store.schema.DefaultSchema.DEFAULT_SCHEMA.getTables().stream()
                        .map(Table::getName)
                        .map(String::toLowerCase)
                        .collect(java.util.stream.Collectors.toSet()),
                tables,
                "what the migrations make");
        try (BackupFile backup = BackupFile.open(file)) {
            for (BackupCover.Part part : backup.cover().parts()) {
                assertTrue(tables.contains(part.table()));
                assertTrue(part.rows() > 0, part.table() + " should be tried with rows");
            }
            assertEquals(tables.size(), backup.cover().parts().size());
        }
    }

    @Test
    void what_is_saved_meanwhile_is_in_it_wholly_or_not_at_all() throws Exception {
        AtomicBoolean isDone = new AtomicBoolean();
        AtomicInteger written = new AtomicInteger();
        Thread writer = new Thread(() -> {
            for (int number = 0; !isDone.get(); number++) {
                notebook.create(
                        Kind.PIECES,
                        UUID.randomUUID(),
                        ContentJson.parse(("{\"title\":\"Piece " + number + "\",\"styles\":[\"reel\",\"jig\"]}")
                                .getBytes(StandardCharsets.UTF_8)),
                        new Notebook.Note("", ""),
                        Optional.empty());
                written.incrementAndGet();
            }
        });
        writer.start();
        try {
            long before = 0;
            for (int round = 0; round < 5; round++) {
                awaitTwoMore(written);
                Map<String, List<String>> lines = lines(backup(database, "round" + round + ".zip"));
                long sheets = lines.get("tables/sheet.jsonl").stream()
                        .filter(line -> line.contains("\"title\":\"Piece "))
                        .count();
                long contents = lines.get("tables/revision.jsonl").stream()
                        .filter(line -> line.contains("\\\"title\\\":\\\"Piece "))
                        .count();
                assertEquals(sheets, contents);
                long styles = lines.get("tables/sheet_style.jsonl").stream()
                        .filter(line -> line.contains("\"reel\"") || line.contains("\"jig\""))
                        .count();
                assertTrue(styles >= 2 * sheets, styles + " styles of " + sheets + " pieces");
                assertTrue(contents > before, "something was saved since the last one");
                before = contents;
            }
        } finally {
            isDone.set(true);
            writer.join();
        }
    }

    /** Of two, the second was begun after this was asked. */
    private static void awaitTwoMore(AtomicInteger count) {
        int before = count.get();
        Instant end = Instant.now().plusSeconds(20);
        while (count.get() < before + 2) {
            assertTrue(Instant.now().isBefore(end), "nothing is written any more");
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(2));
        }
    }
}
