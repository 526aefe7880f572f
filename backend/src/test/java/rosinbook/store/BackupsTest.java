package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.web.SettableClock;

/** When backups make themselves, and which ones they tidy up. */
class BackupsTest {
    private final SettableClock clock = new SettableClock("2026-11-12T20:00:00.123456Z");

    @TempDir
    private Path folder;

    private Database database;
    private Backups backups;

    @BeforeEach
    void open() {
        database = begun();
        backups = kept(database);
    }

    @AfterEach
    void close() {
        database.close();
    }

    /** A database with the notebook that every one holds. */
    private Database begun() {
        Database fresh = Database.inMemory("backups-" + UUID.randomUUID());
        DatabaseSheetStore.onlyNotebook(fresh, clock.instant());
        return fresh;
    }

    private Backups kept(Database of) {
        return new Backups(of, new BackupFolder(folder), clock);
    }

    @Test
    void one_is_made_at_the_start_and_the_next_when_a_day_has_passed() {
        backups.makeIfDue();
        assertEquals(1, backups.list().size());
        clock.pass(Duration.ofHours(23));
        backups.makeIfDue();
        assertEquals(1, backups.list().size());
        clock.pass(Duration.ofHours(2));
        backups.makeIfDue();
        assertEquals(2, backups.list().size());
    }

    @Test
    void one_from_when_the_clock_was_wrong_does_not_stop_those_of_today() {
        clock.pass(Duration.ofDays(2000));
        backups.makeIfDue();
        clock.pass(Duration.ofDays(-2000));
        backups.makeIfDue();
        assertEquals(2, backups.list().size());
        backups.makeIfDue();
        assertEquals(2, backups.list().size(), "today's is there now");
    }

    @Test
    void while_the_notebook_is_damaged_none_is_deleted() {
        new Notebook(DatabaseSheetStore.of(database, DatabaseSheetStore.ONLY_NOTEBOOK), clock)
                .create(
                        Kind.PIECES,
                        UUID.randomUUID(),
                        ContentJson.parse("{\"title\":\"One\"}".getBytes(StandardCharsets.UTF_8)),
                        new Notebook.Note("", ""),
                        Optional.empty());
        Damage.execute(database, "UPDATE revision SET content = '{\"title\":\"Two\"}'");
        makeDaily(backups, 30);
        assertEquals(30, backups.list().size());
        Damage.execute(database, "DELETE FROM revision");
        Damage.execute(database, "DELETE FROM sheet");
        makeDaily(backups, 1);
        assertTrue(backups.list().size() < 30, "whole again, it goes by the rule");
    }

    private void makeDaily(Backups made, int days) {
        for (int day = 0; day < days; day++) {
            made.makeIfDue();
            clock.pass(Duration.ofDays(1));
        }
    }

    @Test
    void two_notebooks_with_one_folder_are_both_backed_up_and_tidy_only_their_own() {
        backups.makeIfDue();
        clock.pass(Duration.ofMinutes(1));
        try (Database other = begun()) {
            Backups others = kept(other);
            makeDaily(others, 20);
            assertEquals(9, others.list().size(), "seven days and two ends of a week");
            assertEquals(1, backups.list().size());
            assertEquals(
                    List.of(others.list().get(0).name(), backups.list().get(0).name()), newestWhole());
        }
    }

    /** Of each notebook one. */
    private List<String> newestWhole() {
        return new BackupFolder(folder)
                .newestWhole().stream().map(BackupFolder.Kept::name).toList();
    }

    @Test
    void two_services_on_one_database_make_one_backup_between_them() {
        backups.makeIfDue();
        kept(database).makeIfDue();
        assertEquals(1, backups.list().size());
    }

    @Test
    void what_another_service_is_writing_is_left_alone_and_what_was_broken_off_is_dropped() throws IOException {
        Path writing = Files.createFile(folder.resolve("rosinbook-2026-11-12-195900-000Z.zip.unfinished"));
        Path brokenOff = Files.createFile(folder.resolve("rosinbook-2026-11-11-195900-000Z.zip.unfinished"));
        Files.setLastModifiedTime(writing, FileTime.from(clock.instant().minus(Duration.ofMinutes(59))));
        Files.setLastModifiedTime(brokenOff, FileTime.from(clock.instant().minus(Duration.ofMinutes(61))));
        backups.make();
        assertTrue(Files.exists(writing));
        assertTrue(Files.notExists(brokenOff));
    }

    @Test
    void those_of_a_clock_that_was_wrong_leave_the_days_of_the_right_one_their_place() {
        clock.pass(Duration.ofDays(365));
        makeDaily(backups, 8);
        int later = backups.list().size();
        clock.pass(Duration.ofDays(-373));
        makeDaily(backups, 8);
        long real = backups.list().stream()
                .filter(kept -> kept.at().isBefore(clock.instant()))
                .count();
        assertTrue(real >= 7, real + " of the last seven days are kept");
        assertEquals(later, backups.list().size() - real, "and those of later until their time has come");
    }

    @Test
    void those_of_a_damaged_notebook_push_out_none_of_when_it_was_whole() {
        makeDaily(backups, 10);
        String lastWhole = backups.list().get(0).name();
        Damage.execute(
                database,
                "INSERT INTO sheet (notebook_id, id, kind, head_number, title, title_order, search_text, played, saved_at)"
                        + " VALUES ('" + DatabaseSheetStore.ONLY_NOTEBOOK + "', '" + UUID.randomUUID()
                        + "', 'pieces', 1, 'One', '6f6e65', 'one', FALSE, CURRENT_TIMESTAMP)");
        makeDaily(backups, 12);
        assertTrue(backups.list().get(0).isOfDamaged());
        Damage.execute(database, "DELETE FROM sheet");
        makeDaily(backups, 1);
        List<String> left = backups.list().stream().map(BackupFolder.Kept::name).toList();
        assertTrue(left.contains(lastWhole), () -> lastWhole + " is not among " + left);
    }
}
