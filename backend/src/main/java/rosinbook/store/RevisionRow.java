package rosinbook.store;

import static rosinbook.store.schema.Tables.REVISION;
import static rosinbook.store.schema.Tables.SHEET;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jooq.Condition;
import org.jooq.Record;
import org.jooq.SelectField;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Revision;
import rosinbook.notebook.UnreadableRevision;

/** A revision as it stands in the database. */
final class RevisionRow {
    /** Without what stands in the sheet's row. */
    static final List<SelectField<?>> OWN_COLUMNS = List.of(
            REVISION.REVISION_NUMBER,
            REVISION.PARENT_NUMBER,
            REVISION.CONTENT,
            REVISION.CONTENT_SHA256,
            REVISION.SAVED_AT,
            REVISION.SAVED_BY,
            REVISION.REASON);

    static final List<SelectField<?>> COLUMNS =
            Stream.concat(Stream.of(SHEET.ID, SHEET.KIND), OWN_COLUMNS.stream()).toList();

    /** How a sheet and its revisions belong together: ids are a notebook's own. */
    static final Condition OF_SHEET = SHEET.NOTEBOOK_ID.eq(REVISION.NOTEBOOK_ID).and(SHEET.ID.eq(REVISION.SHEET_ID));

    private RevisionRow() {}

    /** @throws UnreadableRevision if nobody could have saved this */
    static Revision read(Record found) {
        return read(found.get(SHEET.ID), found.get(SHEET.KIND), found);
    }

    /**
     * The same of a row with {@link #OWN_COLUMNS}.
     *
     * @throws UnreadableRevision if nobody could have saved this
     */
    static Revision read(UUID sheetId, String kind, Record found) {
        try {
            return revision(sheetId, kind, found);
        } catch (IllegalArgumentException | ClassCastException damaged) {
            throw new UnreadableRevision(sheetId, found.get(REVISION.REVISION_NUMBER), damaged);
        }
    }

    private static Revision revision(UUID sheetId, String kind, Record found) {
        byte[] content = found.get(REVISION.CONTENT).getBytes(StandardCharsets.UTF_8);
        return new Revision(
                sheetId,
                DatabasePages.kind(kind),
                found.get(REVISION.REVISION_NUMBER),
                Optional.ofNullable(found.get(REVISION.PARENT_NUMBER)),
                (ObjectNode) ContentJson.parse(content),
                found.get(REVISION.CONTENT_SHA256),
                found.get(REVISION.SAVED_AT).toInstant(),
                found.get(REVISION.SAVED_BY),
                found.get(REVISION.REASON));
    }
}
