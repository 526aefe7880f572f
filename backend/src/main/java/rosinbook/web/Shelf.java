package rosinbook.web;

import io.javalin.http.Context;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.SheetStore;
import rosinbook.share.ShareToken;
import rosinbook.share.Shares;
import rosinbook.store.Archive;
import rosinbook.store.Database;
import rosinbook.store.DatabaseShareStore;
import rosinbook.store.DatabaseSheetStore;

/** All notebooks. Hands out the one a request acts on, and nothing of any other. */
final class Shelf {
    private final Database database;
    private final Clock clock;
    private final SecureRandom random = new SecureRandom();

    Shelf(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    SheetStore sheets(Context exchange) {
        return DatabaseSheetStore.of(database, Visit.of(exchange).notebookId());
    }

    Notebook notebook(Context exchange) {
        return new Notebook(sheets(exchange), clock);
    }

    Archive archive(Context exchange) {
        return new Archive(database, Visit.of(exchange).notebookId());
    }

    Shares shares(Context exchange) {
        return shares(Visit.of(exchange).notebookId());
    }

    Shares shares(UUID notebookId) {
        return new Shares(
                new Notebook(DatabaseSheetStore.of(database, notebookId), clock),
                new DatabaseShareStore(database, notebookId),
                clock,
                random);
    }

    /** The share that a token opens, and its notebook; the token is all that somebody who was given a link has. */
    Optional<DatabaseShareStore.Found> shared(String token) {
        return ShareToken.parse(token).flatMap(known -> DatabaseShareStore.byToken(database, known.sha256()));
    }
}
