package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.h2.api.ErrorCode;
import org.jooq.DSLContext;
import org.jooq.exception.DataAccessException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DataFolderTest {
    @TempDir
    private Path folder;

    private Path file(String name) {
        return folder.resolve(name);
    }

    @Test
    void what_a_broken_off_first_start_left_is_no_obstacle() throws IOException {
        Files.writeString(file("rosinbook.new.mv.db"), "half");
        Database.inFolder(folder).close();
        assertTrue(Files.exists(file("rosinbook.mv.db")));
        assertFalse(Files.exists(file("rosinbook.new.mv.db")));
    }

    @Test
    void two_at_once_are_refused_and_one_after_the_other_are_not() {
        try (Database first = Database.inFolder(folder)) {
            assertTrue(first.isAlive());
            var problem = assertThrows(DatabaseInUse.class, () -> Database.inFolder(folder));
            assertTrue(problem.getMessage().contains("another Rosinbook has it open"), problem.getMessage());
        }
        Database.inFolder(folder).close();
    }

    @Test
    void a_file_that_another_program_holds_is_told_and_waited_for() throws IOException {
        Database.inFolder(folder).close();
        try (FileChannel other = FileChannel.open(file("rosinbook.mv.db"), StandardOpenOption.WRITE)) {
            assertNotNull(other.tryLock());
            var problem = assertThrows(DatabaseUnavailable.class, () -> Database.inFolder(folder));
            assertTrue(
                    problem.getMessage().contains("another program holds " + file("rosinbook.mv.db")),
                    problem.getMessage());
            assertTrue(StorageTrouble.isOfFile(problem), "nor is it the fault of a request while this happens");
        }
        Database.inFolder(folder).close();
    }

    @Test
    void old_tables_are_brought_up_to_date_in_a_copy() {
        OldNotebook.write(folder, "2");
        try (Database database = Database.inFolder(folder)) {
            assertEquals(
                    1,
                    new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK)
                            .verify()
                            .revisions());
            assertFalse(database.migrations().arePending());
        }
    }

    @Test
    void what_was_read_before_the_file_was_closed_is_not_remembered() {
        try (Database database = Database.inFolder(folder)) {
            Memory before = database.memory();
            closedByItself(database);
            database.change(sql -> sql.selectOne().fetch());
            assertNotSame(before, database.memory());
        }
    }

    /** As it does when it cannot write its file. */
    private static void closedByItself(Database database) {
        try {
            database.look(sql -> sql.execute("SHUTDOWN IMMEDIATELY"));
        } catch (DatabaseUnavailable closed) {
            // the end of the transaction may meet that already
        }
    }

    @Test
    void who_waits_behind_a_long_change_can_give_up() throws Exception {
        try (Database database = Database.inFolder(folder)) {
            CountDownLatch isChanging = new CountDownLatch(1);
            CountDownLatch mayEnd = new CountDownLatch(1);
            Thread first = new Thread(() -> database.change(sql -> {
                isChanging.countDown();
                return awaited(mayEnd);
            }));
            first.start();
            assertTrue(awaited(isChanging));
            CompletableFuture<DatabaseBusy> told = new CompletableFuture<>();
            Thread second =
                    new Thread(() -> told.complete(assertThrows(DatabaseBusy.class, () -> database.change(sql -> 2))));
            second.start();
            second.interrupt();
            assertTrue(told.get(5, TimeUnit.SECONDS).getMessage().contains("try again in a moment"));
            mayEnd.countDown();
            first.join();
            assertEquals(List.of(1), database.change(sql -> List.of(1)));
        }
    }

    private static boolean awaited(CountDownLatch latch) {
        try {
            return latch.await(20, TimeUnit.SECONDS);
        } catch (InterruptedException interrupted) {
            throw new IllegalStateException(interrupted);
        }
    }

    @Test
    void tables_of_a_newer_rosinbook_are_left_alone() {
        writeOfANewerRosinbook();
        var problem = assertThrows(DatabaseUnavailable.class, () -> Database.inFolder(folder));
        assertTrue(problem.getMessage().contains("a newer Rosinbook wrote it"), problem.getMessage());
    }

    private void writeOfANewerRosinbook() {
        try (Database database = Database.inFolder(folder)) {
            database.change(sql ->
                    sql.execute("UPDATE \"flyway_schema_history\" SET \"version\" = '999' WHERE \"installed_rank\" ="
                            + " (SELECT MAX(\"installed_rank\") FROM \"flyway_schema_history\")"));
        }
    }

    @Test
    void a_file_that_vanished_is_not_taken_for_a_fresh_notebook() throws IOException {
        Database.inFolder(folder).close();
        Files.delete(file("rosinbook.mv.db"));
        var problem = assertThrows(DatabaseDamaged.class, () -> Database.inFolder(folder));
        assertTrue(problem.getMessage().endsWith("is missing"), problem.getMessage());
        assertFalse(Files.exists(file("rosinbook.mv.db")));
    }

    @Test
    void a_database_that_closed_itself_is_opened_again_for_the_next_who_asks() {
        try (Database database = Database.inFolder(folder)) {
            DatabaseSheetStore.onlyNotebook(database, Instant.now());
            assertThrows(
                    RuntimeException.class,
                    () -> database.look(sql -> sql.execute("SHUTDOWN IMMEDIATELY")
                            + sql.fetchCount(rosinbook.store.schema.Tables.NOTEBOOK)));
            assertEquals(1, database.<Integer>look(sql -> sql.fetchCount(rosinbook.store.schema.Tables.NOTEBOOK)));
            assertEquals(List.of(), BackupWriter.damages(database));
        }
    }

    @Test
    void running_out_of_memory_is_not_told_as_damage_and_the_next_who_asks_is_answered() {
        try (Database database = Database.inFolder(folder)) {
            for (Function<Function<DSLContext, Object>, Object> way :
                    List.<Function<Function<DSLContext, Object>, Object>>of(database::look, database::change)) {
                AtomicInteger tries = new AtomicInteger();
                var problem = assertThrows(
                        DatabaseUnavailable.class,
                        () -> way.apply(sql -> {
                            tries.incrementAndGet();
                            throw new DataAccessException(
                                    "away", new SQLException("Out of memory.", "90108", ErrorCode.OUT_OF_MEMORY));
                        }));
                assertTrue(problem.getMessage().contains("Java ran out of memory; start it with more"));
                assertEquals(1, tries.get(), "it would run out of it again");
                assertEquals(1, way.apply(sql -> sql.fetchValue("SELECT 1")));
            }
        }
    }

    @Test
    void a_file_that_is_lost_after_a_kill_is_not_taken_for_a_fresh_notebook() throws IOException {
        Database.inFolder(folder).close();
        Files.delete(file("rosinbook.mv.db"));
        Files.delete(file("rosinbook.seal"));
        Files.writeString(file("rosinbook.running"), "{}");
        var problem = assertThrows(DatabaseDamaged.class, () -> Database.inFolder(folder));
        assertTrue(problem.getMessage().endsWith("is missing"), problem.getMessage());
        assertFalse(Files.exists(file("rosinbook.mv.db")));
    }

    @Test
    void a_start_that_was_refused_leaves_the_notebook_sealed() throws IOException {
        writeOfANewerRosinbook();
        assertThrows(DatabaseUnavailable.class, () -> Database.inFolder(folder));
        flipABit();
        var problem = assertThrows(DatabaseDamaged.class, () -> Database.inFolder(folder));
        assertTrue(problem.getMessage().contains("not as it was left"), problem.getMessage());
    }

    @Test
    void tables_that_cannot_be_brought_up_to_date_are_left_sealed_and_no_half_copy_beside_them() throws IOException {
        Database.inEmptyFolder(folder, old -> {
                    old.migrations().to("2");
                    Damage.execute(old, "CREATE TABLE player (id INTEGER)"); // which a later version wants to make
                })
                .close();
        assertThrows(DatabaseUnavailable.class, () -> Database.inFolder(folder));
        assertTrue(Files.exists(file("rosinbook.seal")));
        assertFalse(Files.exists(file("rosinbook.new.mv.db")));
    }

    @Test
    void a_notebook_that_was_brought_up_to_date_does_not_keep_the_seal_of_the_file_before() throws IOException {
        OldNotebook.write(folder, "2");
        try (Database database = Database.inFolder(folder)) {
            assertTrue(database.isAlive());
            assertFalse(Files.exists(file("rosinbook.seal")));
        }
        Database.inFolder(folder).close();
    }

    private void flipABit() throws IOException {
        byte[] bytes = Files.readAllBytes(file("rosinbook.mv.db"));
        bytes[bytes.length / 2] ^= 1;
        Files.write(file("rosinbook.mv.db"), bytes);
    }

    @Test
    void a_folder_whose_name_would_end_the_databases_address_is_refused() {
        Path odd = folder.resolve("a;b");
        var problem = assertThrows(IllegalArgumentException.class, () -> Database.inFolder(odd));
        assertTrue(problem.getMessage().contains("its name has a semicolon; name another with --data"));
        assertFalse(Files.exists(odd));
    }
}
