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
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Revision;

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

    /** @throws RevisionDamaged if its content cannot be read */
    static Revision read(Record found) {
        return read(found.get(SHEET.ID), found.get(SHEET.KIND), found);
    }

    /**
     * The same of a row with {@link #OWN_COLUMNS}.
     *
     * @throws RevisionDamaged if its content cannot be read
     */
    static Revision read(UUID sheetId, String kind, Record found) {
        int number = found.get(REVISION.REVISION_NUMBER);
        return new Revision(
                sheetId,
                DatabasePages.kind(kind),
                number,
                Optional.ofNullable(found.get(REVISION.PARENT_NUMBER)),
                content(found.get(REVISION.CONTENT), kind + " " + sheetId + ": revision " + number),
                found.get(REVISION.CONTENT_SHA256),
                found.get(REVISION.SAVED_AT).toInstant(),
                found.get(REVISION.SAVED_BY),
                found.get(REVISION.REASON));
    }

    private static ObjectNode content(String stored, String place) {
        try {
            return (ObjectNode) ContentJson.parse(stored.getBytes(StandardCharsets.UTF_8));
        } catch (InvalidContent | ClassCastException unreadable) {
            throw new RevisionDamaged(place, unreadable);
        }
    }
}
