package rosinbook.web;

import java.util.UUID;
import rosinbook.store.Database;

class DiscretionTest extends DiscretionContract {
    @Override
    Database fresh() {
        return Database.inMemory("t" + UUID.randomUUID());
    }

    @Override
    String notValid() {
        return " NOCHECK";
    }
}
