package rosinbook.store;

import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.io.TempDir;

class H2SheetStoreTest extends SheetStoreContract {
    @TempDir
    private Path folder;

    @Override
    Database fresh() {
        return Database.inFolder(folder.resolve(UUID.randomUUID().toString()));
    }
}
