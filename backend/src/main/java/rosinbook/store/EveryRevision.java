package rosinbook.store;

import static rosinbook.store.schema.Tables.REVISION;
import static rosinbook.store.schema.Tables.SHEET;

import java.util.List;
import java.util.UUID;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Record3;
import org.jooq.Result;

/**
 * All revisions of a notebook, sheet by sheet in the order of their numbers. A few are asked for at a time: an embedded
 * database has the whole answer to a statement in memory, however little of it is fetched.
 */
final class EveryRevision {
    /** Revisions that are held in memory at once. */
    static final int AT_ONCE = 20;

    private final DSLContext sql;
    private final UUID notebookId;

    EveryRevision(DSLContext sql, UUID notebookId) {
        this.sql = sql;
        this.notebookId = notebookId;
    }

    /** Told each revision, with columns as {@link RevisionRow#OWN_COLUMNS}. */
    interface Reader {
        /** @param kind as it stands there, known or not */
        void read(UUID sheetId, String kind, int headNumber, Record revision);
    }

    void forEach(Reader reader) {
        Result<Record3<UUID, String, Integer>> sheets = sql.select(SHEET.ID, SHEET.KIND, SHEET.HEAD_NUMBER)
                .from(SHEET)
                .where(SHEET.NOTEBOOK_ID.eq(notebookId))
                .orderBy(SHEET.KIND, SHEET.ID)
                .fetch();
        for (Record3<UUID, String, Integer> sheet : sheets) {
            int last = Integer.MIN_VALUE;
            List<Record> revisions;
            do {
                revisions = after(sheet.value1(), last);
                for (Record revision : revisions) {
                    reader.read(sheet.value1(), sheet.value2(), sheet.value3(), revision);
                    last = revision.get(REVISION.REVISION_NUMBER);
                }
            } while (revisions.size() == AT_ONCE);
        }
    }

    private List<Record> after(UUID sheetId, int last) {
        return sql.select(RevisionRow.OWN_COLUMNS)
                .from(REVISION)
                .where(REVISION.NOTEBOOK_ID.eq(notebookId))
                .and(REVISION.SHEET_ID.eq(sheetId))
                .and(REVISION.REVISION_NUMBER.gt(last))
                .orderBy(REVISION.NOTEBOOK_ID, REVISION.SHEET_ID, REVISION.REVISION_NUMBER)
                .limit(AT_ONCE)
                .fetch();
    }
}
