package rosinbook.store;

import rosinbook.testing.PostgresServer;

class PostgresShareStoreIT extends ShareStoreContract {
    @Override
    Database fresh() {
        return PostgresServer.freshDatabase();
    }
}
