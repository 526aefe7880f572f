package rosinbook.store;

import static rosinbook.store.schema.Tables.BLOB;
import static rosinbook.store.schema.Tables.REVISION;
import static rosinbook.store.schema.Tables.SHARE;
import static rosinbook.store.schema.Tables.SHEET;

import java.util.List;
import java.util.UUID;

/** How much a notebook holds, so that a test can tell that nothing was added or taken away. */
public final class RowCounts {
    private RowCounts() {}

    /** Sheets, revisions, files and shares. */
    public static List<Integer> of(Database database) {
        return database.look(sql ->
                List.of(sql.fetchCount(SHEET), sql.fetchCount(REVISION), sql.fetchCount(BLOB), sql.fetchCount(SHARE)));
    }

    /** Sheets, revisions and files of one of the notebooks. */
    public static List<Integer> of(Database database, UUID notebookId) {
        return database.look(sql -> List.of(
                sql.fetchCount(SHEET, SHEET.NOTEBOOK_ID.eq(notebookId)),
                sql.fetchCount(REVISION, REVISION.NOTEBOOK_ID.eq(notebookId)),
                sql.fetchCount(BLOB, BLOB.NOTEBOOK_ID.eq(notebookId))));
    }
}
