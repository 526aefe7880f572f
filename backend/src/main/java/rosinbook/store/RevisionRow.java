package rosinbook.store;

import static rosinbook.store.schema.Tables.REVISION;
import static rosinbook.store.schema.Tables.SHEET;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.jooq.Condition;
import org.jooq.Record;
import org.jooq.SelectField;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Revision;
import rosinbook.notebook.UnreadableRevision;

/** A revision as it stands in the database. */
final class RevisionRow {
    static final List<SelectField<?>> COLUMNS = List.of(
            SHEET.ID,
            SHEET.KIND,
            SHEET.TITLE,
            SHEET.HAPPENED_ON,
            REVISION.REVISION_NUMBER,
            REVISION.PARENT_NUMBER,
            REVISION.CONTENT,
            REVISION.CONTENT_SHA256,
            REVISION.SAVED_AT,
            REVISION.SAVED_BY,
            REVISION.REASON);

    /** How a sheet and its revisions belong together: ids are a notebook's own. */
    static final Condition OF_SHEET = SHEET.NOTEBOOK_ID.eq(REVISION.NOTEBOOK_ID).and(SHEET.ID.eq(REVISION.SHEET_ID));

    private RevisionRow() {}

    /** @throws UnreadableRevision if nobody could have saved this */
    static Revision read(Record found) {
        try {
            return revision(found);
        } catch (IllegalArgumentException damaged) {
            throw new UnreadableRevision(found.get(SHEET.ID), found.get(REVISION.REVISION_NUMBER), damaged);
        }
    }

    private static Revision revision(Record found) {
        byte[] content = found.get(REVISION.CONTENT).getBytes(StandardCharsets.UTF_8);
        return new Revision(
                found.get(SHEET.ID),
                DatabasePages.kind(found.get(SHEET.KIND)),
                found.get(REVISION.REVISION_NUMBER),
                Optional.ofNullable(found.get(REVISION.PARENT_NUMBER)),
                (ObjectNode) ContentJson.parse(content),
                found.get(REVISION.CONTENT_SHA256),
                found.get(REVISION.SAVED_AT).toInstant(),
                found.get(REVISION.SAVED_BY),
                found.get(REVISION.REASON));
    }
}
