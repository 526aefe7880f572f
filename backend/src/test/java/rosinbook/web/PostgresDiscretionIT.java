package rosinbook.web;

import rosinbook.store.Database;
import rosinbook.testing.PostgresServer;

class PostgresDiscretionIT extends DiscretionContract {
    @Override
    Database fresh() {
        return PostgresServer.freshDatabase();
    }

    @Override
    String notValid() {
        return " NOT VALID";
    }
}
