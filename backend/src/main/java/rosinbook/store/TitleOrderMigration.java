package rosinbook.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.UUID;
import org.flywaydb.core.api.MigrationVersion;
import org.flywaydb.core.api.migration.Context;
import org.flywaydb.core.api.migration.JavaMigration;

/** Gives the sheets that are there already their place by title; follows V006, which makes room for it. */
final class TitleOrderMigration implements JavaMigration {
    @Override
    public MigrationVersion getVersion() {
        return MigrationVersion.fromVersion("006.1");
    }

    @Override
    public String getDescription() {
        return "title order of earlier sheets";
    }

    @Override
    public Integer getChecksum() {
        return null;
    }

    @Override
    public boolean canExecuteInTransaction() {
        return true;
    }

    @Override
    public void migrate(Context context) throws SQLException {
        Connection connection = context.getConnection();
        try (Statement reading = connection.createStatement();
                PreparedStatement writing = connection.prepareStatement(
                        "UPDATE sheet SET title_order = ? WHERE notebook_id = ? AND id = ?");
                ResultSet sheets = reading.executeQuery("SELECT notebook_id, id, title FROM sheet")) {
            while (sheets.next()) {
                writing.setString(1, TitleOrder.key(sheets.getString(3)));
                writing.setObject(2, sheets.getObject(1, UUID.class));
                writing.setObject(3, sheets.getObject(2, UUID.class));
                writing.addBatch();
            }
            writing.executeBatch();
        }
        try (Statement changing = connection.createStatement()) {
            changing.execute("ALTER TABLE sheet ALTER COLUMN title_order SET NOT NULL");
        }
    }
}
