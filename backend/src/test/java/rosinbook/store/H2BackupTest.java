package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class H2BackupTest extends BackupContract {
    @Override
    Database fresh() {
        return Database.inFolder(folder.resolve(UUID.randomUUID().toString()));
    }

    @Override
    Database restored(Path file) throws IOException {
        Path empty = folder.resolve("restored");
        Restore.intoFolder(file, empty);
        return Database.inFolder(empty);
    }

    @Test
    void what_others_keep_in_the_same_schema_does_not_matter() throws IOException {
        Path before = backup(source(), "before.zip");
        Damage.execute(source(), "CREATE VIEW a_view_of_others AS SELECT title FROM sheet");
        Damage.execute(source(), "CREATE TABLE a_table_of_others (without_a_key INTEGER)");
        assertEquals(lines(before), lines(backup(source(), "after.zip")));
    }
}
