package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import rosinbook.access.Player;
import rosinbook.access.Right;
import rosinbook.notebook.Blob;
import rosinbook.testing.PostgresServer;

class PostgresAccessStoreIT extends AccessStoreContract {
    @Override
    Database fresh() {
        return PostgresServer.freshDatabase();
    }

    @Test
    void who_may_read_is_changed_while_a_long_import_goes_on() {
        Player ada = joined("Ada");
        byte[] file = "of the import".getBytes(StandardCharsets.UTF_8);
        database().change(sql -> {
            new BlobTable(sql, FIRST).keep(Blob.of(file), file);
            CompletableFuture.supplyAsync(() -> notebooks().let(FIRST, ada.id(), Right.READ))
                    .orTimeout(15, TimeUnit.SECONDS)
                    .join();
            return null;
        });
        assertEquals(Optional.of(Right.READ), notebooks().right(FIRST, ada.id()));
    }
}
