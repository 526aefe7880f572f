package rosinbook.store;

import rosinbook.testing.PostgresServer;

class PostgresSheetStoreIT extends SheetStoreContract {
    @Override
    Database fresh() {
        return PostgresServer.freshDatabase();
    }
}
