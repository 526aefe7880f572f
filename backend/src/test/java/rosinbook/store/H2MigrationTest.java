package rosinbook.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;

class H2MigrationTest extends MigrationContract {
    @TempDir
    private Path folder;

    @Override
    void empty() {
        // A folder without files is one.
    }

    @Override
    List<String> way() {
        return List.of("jdbc:h2:file:" + folder.resolve("rosinbook"), "rosinbook", "");
    }

    @Override
    Connection connect() throws SQLException {
        return DriverManager.getConnection(way().get(0), way().get(1), way().get(2));
    }

    @Override
    Database open() {
        return Database.inFolder(folder);
    }
}
