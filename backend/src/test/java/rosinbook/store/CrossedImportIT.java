package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Revision;
import rosinbook.testing.PostgresServer;

/** An import while another process on the same database saves a sheet that is in the archive. */
class CrossedImportIT {
    private static final UUID PIECE = UUID.fromString("11111111-0000-4000-8000-000000000001");
    private static final UUID NOTEBOOK = DatabaseSheetStore.ONLY_NOTEBOOK;
    private static final String FIRST = "sheets/pieces/" + PIECE + "/r0001.json";
    private static final String SECOND = "sheets/pieces/" + PIECE + "/r0002.json";

    private PostgresServer.Address place;
    private Database here;
    private Database there;
    private Map<String, String> whole;

    @BeforeEach
    void open() throws IOException {
        place = PostgresServer.migratedDatabase();
        here = place.open();
        there = place.open();
        DatabaseSheetStore.onlyNotebook(here, Clock.systemUTC().instant());
        whole = archive("Two");
        Map<String, String> begun = new TreeMap<>(whole);
        begun.keySet().remove(SECOND);
        assertEquals(new Archive.Imported(1, 0), imported(begun));
    }

    @AfterEach
    void close() {
        if (here != null) {
            here.close();
            there.close();
        }
    }

    private Archive.Imported imported(Map<String, String> contents) throws IOException {
        return new Archive(here, NOTEBOOK).read(new ByteArrayInputStream(Zips.zip(contents)));
    }

    /** A piece called One, and then this. */
    private static Map<String, String> archive(String second) throws IOException {
        try (Database database = Database.inMemory("crossed-" + UUID.randomUUID())) {
            Clock clock = Clock.systemUTC();
            Notebook notebook = new Notebook(DatabaseSheetStore.onlyNotebook(database, clock.instant()), clock);
            Notebook.Note note = new Notebook.Note("", "");
            notebook.create(Kind.PIECES, PIECE, title("One"), note, Optional.empty());
            notebook.save(Kind.PIECES, PIECE, 1, title(second), note, Optional.empty(), Set.of());
            ByteArrayOutputStream zip = new ByteArrayOutputStream();
            new Archive(database, NOTEBOOK).export(zip);
            return Zips.contents(zip.toByteArray());
        }
    }

    private static com.fasterxml.jackson.databind.JsonNode title(String title) {
        return ContentJson.parse(("{\"title\":\"" + title + "\"}").getBytes(StandardCharsets.UTF_8));
    }

    /** Imports all while somebody else's second revision is written but not yet committed. */
    private Archive.Imported importedAcross(String second) throws Exception {
        Revision crossing = ArchiveEntry.read(SECOND, second.getBytes(StandardCharsets.UTF_8));
        CountDownLatch isWritten = new CountDownLatch(1);
        CompletableFuture<Void> saving = CompletableFuture.runAsync(() -> there.change(sql -> {
            new DatabasePages(sql, NOTEBOOK).append(crossing, crossing.content());
            isWritten.countDown();
            awaitSomebodyWaiting();
            return null;
        }));
        assertTrue(isWritten.await(10, TimeUnit.SECONDS));
        try {
            return imported(whole);
        } finally {
            saving.get(30, TimeUnit.SECONDS);
        }
    }

    private void awaitSomebodyWaiting() {
        String waiting =
                "SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock'";
        try (Connection connection = place.connect();
                var statement = connection.createStatement()) {
            for (int tries = 0; tries < 1000; tries++) {
                try (var found = statement.executeQuery(waiting)) {
                    if (found.next() && found.getInt(1) > 0) {
                        return;
                    }
                }
                TimeUnit.MILLISECONDS.sleep(10);
            }
            throw new AssertionError("the import waits for nobody");
        } catch (SQLException | InterruptedException problem) {
            throw new AssertionError(problem);
        }
    }

    @Test
    void a_save_of_something_else_is_told_as_any_difference_is() {
        var problem = assertThrows(
                ArchiveUnreadable.class, () -> importedAcross(archive("Three").get(SECOND)));
        assertTrue(problem.getMessage().contains("differs from the revision of the same number"), problem.getMessage());
    }

    @Test
    void what_somebody_else_imports_at_the_same_time_is_recognised() throws Exception {
        assertTrue(whole.containsKey(FIRST));
        assertEquals(new Archive.Imported(0, 2), importedAcross(whole.get(SECOND)));
    }
}
