package rosinbook.store;

import java.util.UUID;

class H2AccessStoreTest extends AccessStoreContract {
    @Override
    Database fresh() {
        return Database.inMemory("t" + UUID.randomUUID());
    }
}
