package rosinbook.store;

import rosinbook.testing.PostgresServer;

class PostgresAccessStoreIT extends AccessStoreContract {
    @Override
    Database fresh() {
        return PostgresServer.freshDatabase();
    }
}
