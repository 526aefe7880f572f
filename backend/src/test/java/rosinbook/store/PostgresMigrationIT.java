package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.UUID;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import rosinbook.testing.PostgresServer;

class PostgresMigrationIT extends MigrationContract {
    private PostgresServer.Address address;

    @Override
    void empty() {
        address = PostgresServer.emptyDatabase();
    }

    @Override
    List<String> way() {
        return List.of(address.url(), address.user(), address.password());
    }

    @Override
    Connection connect() throws SQLException {
        return address.connect();
    }

    @Override
    Database open() {
        return address.open();
    }

    @Test
    void tables_of_a_newer_rosinbook_are_left_alone() throws SQLException {
        empty();
        open().close();
        try (Connection connection = connect();
                Statement statement = connection.createStatement()) {
            statement.execute("UPDATE flyway_schema_history SET version = '999' WHERE installed_rank ="
                    + " (SELECT MAX(installed_rank) FROM flyway_schema_history)");
        }
        var problem = assertThrows(DatabaseUnavailable.class, this::open);
        assertTrue(problem.getMessage().contains("a newer Rosinbook wrote it (tables 999)"), problem.getMessage());
    }

    @Test
    void what_only_reads_leaves_tables_of_an_earlier_rosinbook_as_they_are() throws SQLException {
        empty();
        Flyway.configure()
                .dataSource(address.url(), address.user(), address.password())
                .locations("classpath:migrations")
                .target("4")
                .load()
                .migrate();
        var problem = assertThrows(
                DatabaseUnavailable.class,
                () -> Database.existingPostgresql(address.url(), address.user(), address.password()));
        assertTrue(
                problem.getMessage().contains("of an earlier Rosinbook; start serve of this version first"),
                problem.getMessage());
        try (Connection connection = connect();
                Statement statement = connection.createStatement();
                var newest = statement.executeQuery("SELECT MAX(version) FROM flyway_schema_history")) {
            assertTrue(newest.next());
            assertEquals("004", newest.getString(1));
        }
        open().close();
        Database.existingPostgresql(address.url(), address.user(), address.password())
                .close();
    }

    @Test
    void a_user_who_may_not_make_tables_and_a_database_of_something_else_are_told_apart() throws SQLException {
        empty();
        String other = "r" + UUID.randomUUID().toString().replace("-", "");
        try (Connection connection = connect();
                Statement statement = connection.createStatement()) {
            statement.execute("CREATE ROLE " + other + " LOGIN PASSWORD 'secret'");
            var problem =
                    assertThrows(DatabaseUnavailable.class, () -> Database.postgresql(address.url(), other, "secret"));
            assertTrue(problem.getMessage().contains("make this user the owner of the database"), problem.getMessage());
            statement.execute("DROP ROLE " + other);
            statement.execute("CREATE TABLE theirs (id INTEGER)");
        }
        var problem = assertThrows(DatabaseUnavailable.class, this::open);
        assertTrue(problem.getMessage().contains("holds other tables; name an empty database"), problem.getMessage());
    }

    @Test
    void user_and_password_may_stand_in_the_address() {
        empty();
        String all = address.url() + "?user=" + address.user() + "&password=" + address.password();
        try (Database database = Database.postgresql(all, "", "")) {
            assertTrue(database.isAlive());
        }
    }
}
