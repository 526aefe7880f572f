package rosinbook.store;

import java.util.UUID;

class H2ShareStoreTest extends ShareStoreContract {
    @Override
    Database fresh() {
        return Database.inMemory("t" + UUID.randomUUID());
    }
}
