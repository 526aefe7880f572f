package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import rosinbook.access.NotebookEntry;
import rosinbook.testing.PostgresServer;

class PostgresBackupIT extends BackupContract {
    @Override
    Database fresh() {
        return PostgresServer.freshDatabase();
    }

    @Override
    Database restored(Path file) throws IOException {
        PostgresServer.Address place = PostgresServer.emptyDatabase();
        Restore.intoPostgresql(file, place.url(), place.user(), place.password());
        return Database.postgresql(place.url(), place.user(), place.password());
    }

    @Test
    void from_postgresql_to_a_folder_and_back_every_row_is_the_same() throws IOException {
        Path first = backup(source(), "first.zip");
        Restore.intoFolder(first, folder.resolve("embedded"));
        Path second;
        try (Database embedded = Database.inFolder(folder.resolve("embedded"))) {
            second = backup(embedded, "second.zip");
        }
        try (Database back = restored(second)) {
            Path third = backup(back, "third.zip");
            assertEquals(lines(second), lines(third));
            Map<String, List<String>> expected = lines(first);
            expected.put("tables/sign_in_session.jsonl", List.of());
            expected.put("tables/invitation.jsonl", List.of());
            assertEquals(expected, lines(second));
        }
    }

    @Test
    void views_and_foreign_tables_of_extensions_are_neither_backed_up_nor_in_the_way() throws Exception {
        Path before = backup(source(), "before.zip");
        Damage.execute(source(), "CREATE EXTENSION pg_stat_statements");
        Damage.execute(source(), "CREATE EXTENSION file_fdw");
        Damage.execute(source(), "CREATE SERVER files FOREIGN DATA WRAPPER file_fdw");
        Damage.execute(
                source(),
                "CREATE FOREIGN TABLE a_foreign_table (line TEXT) SERVER files OPTIONS (filename '/nowhere')");
        Path file = backup(source(), "after.zip");
        assertEquals(lines(before), lines(file));
        PostgresServer.Address place = PostgresServer.emptyDatabase();
        try (Connection connection = place.connect();
                Statement statement = connection.createStatement()) {
            statement.execute("CREATE EXTENSION pg_stat_statements");
        }
        assertEquals(
                List.of(),
                Restore.intoPostgresql(file, place.url(), place.user(), place.password())
                        .damages());
    }

    @Test
    void a_database_with_a_notebook_in_it_is_left_alone() throws IOException {
        Path file = backup(source(), "first.zip");
        PostgresServer.Address place = PostgresServer.emptyDatabase();
        Restore.intoPostgresql(file, place.url(), place.user(), place.password());
        var problem = assertThrows(
                IllegalArgumentException.class,
                () -> Restore.intoPostgresql(file, place.url(), place.user(), place.password()));
        assertTrue(problem.getMessage().contains("only into an empty one"), problem.getMessage());
    }

    @Test
    void what_somebody_begins_after_the_database_was_found_empty_is_left_alone() throws Exception {
        Path file = backup(source(), "first.zip");
        PostgresServer.Address place = PostgresServer.migratedDatabase();
        try (Connection other = place.connect();
                Statement statement = other.createStatement()) {
            other.setAutoCommit(false);
            statement.execute("INSERT INTO notebook (id, title, created_at) VALUES ('"
                    + DatabaseSheetStore.ONLY_NOTEBOOK + "', 'Begun meanwhile', CURRENT_TIMESTAMP)");
            CompletableFuture<Throwable> told = CompletableFuture.supplyAsync(() -> assertThrows(
                    IllegalArgumentException.class,
                    () -> Restore.intoPostgresql(file, place.url(), place.user(), place.password())));
            awaitSomebodyWaiting(statement);
            other.commit();
            String sentence = told.get(30, TimeUnit.SECONDS).getMessage();
            assertTrue(sentence.contains("holds a notebook already"), sentence);
        }
        try (Database left = place.open()) {
            assertEquals(
                    List.of("Begun meanwhile"),
                    new DatabaseNotebookStore(left)
                            .all().stream().map(NotebookEntry::title).toList());
        }
    }

    /** For a row that another transaction has added and not committed yet. */
    private static void awaitSomebodyWaiting(Statement statement) throws Exception {
        Instant end = Instant.now().plusSeconds(30);
        boolean isWaiting = false;
        while (!isWaiting) {
            assertTrue(Instant.now().isBefore(end), "nobody waits for the row");
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(20));
            try (ResultSet waiting = statement.executeQuery(
                    "SELECT COUNT(*) FROM pg_locks WHERE NOT granted" + " AND locktype = 'transactionid'")) {
                waiting.next();
                isWaiting = waiting.getInt(1) > 0;
            }
        }
    }
}
