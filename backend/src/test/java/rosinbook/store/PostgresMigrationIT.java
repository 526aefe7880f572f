package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
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
}
