package rosinbook.store;

import static rosinbook.store.schema.Tables.NOTEBOOK;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.UUID;
import java.util.function.Function;
import rosinbook.notebook.Pages;
import rosinbook.notebook.SheetStore;

/** One notebook's sheets in a database. */
public final class DatabaseSheetStore implements SheetStore {
    /** The notebook that every database holds, and that is meant where none is named. */
    public static final UUID ONLY_NOTEBOOK = UUID.fromString("00000000-0000-0000-0000-000000000001");

    private final Database database;
    private final UUID notebookId;

    private DatabaseSheetStore(Database database, UUID notebookId) {
        this.database = database;
        this.notebookId = notebookId;
    }

    /** The first notebook in this database; it is made if there is none yet. */
    public static DatabaseSheetStore onlyNotebook(Database database, Instant now) {
        if (!database.look(sql -> sql.fetchExists(NOTEBOOK, NOTEBOOK.ID.eq(ONLY_NOTEBOOK)))) {
            database.change(sql -> sql.insertInto(NOTEBOOK)
                    .columns(NOTEBOOK.ID, NOTEBOOK.TITLE, NOTEBOOK.CREATED_AT)
                    .values(ONLY_NOTEBOOK, "Rosinbook", OffsetDateTime.ofInstant(now, ZoneOffset.UTC))
                    .onConflictDoNothing()
                    .execute());
        }
        return new DatabaseSheetStore(database, ONLY_NOTEBOOK);
    }

    /** The sheets of a notebook that is there. */
    public static DatabaseSheetStore of(Database database, UUID notebookId) {
        return new DatabaseSheetStore(database, notebookId);
    }

    @Override
    public <T> T change(Function<Pages, T> work) {
        return database.change(sql -> work.apply(new DatabasePages(sql, notebookId)));
    }

    @Override
    public <T> T look(Function<Pages, T> work) {
        return database.look(sql -> work.apply(new ReadPages(sql, notebookId, database.memory())));
    }
}
