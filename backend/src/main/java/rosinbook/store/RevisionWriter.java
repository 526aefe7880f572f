package rosinbook.store;

import static rosinbook.store.schema.Tables.REVISION;
import static rosinbook.store.schema.Tables.RIG_STRING;
import static rosinbook.store.schema.Tables.SHEET;
import static rosinbook.store.schema.Tables.SHEET_LINK;
import static rosinbook.store.schema.Tables.SHEET_STYLE;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jooq.DSLContext;
import rosinbook.notebook.Content;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Rig;
import rosinbook.notebook.TakeSheet;
import rosinbook.notebook.Words;

/** Adds revisions, and keeps beside them what has to be asked. */
final class RevisionWriter {
    private static final int CONTENT_FORMAT = 1;
    private static final int SEARCH_LENGTH = 100_000;

    private final DSLContext sql;
    private final UUID notebookId;

    RevisionWriter(DSLContext sql, UUID notebookId) {
        this.sql = sql;
        this.notebookId = notebookId;
    }

    void append(Revision revision, Content content) {
        appendWithoutLinks(revision, content);
        writeLinks(revision.sheetId(), content);
    }

    /** For importing, where what is linked to may come later. */
    void appendWithoutLinks(Revision revision, Content content) {
        writeSheet(revision, content);
        writeRevision(revision);
        writeStyles(revision.sheetId(), content);
        if (content instanceof Rig rig) {
            writeStrings(revision, rig);
        }
    }

    private void writeSheet(Revision revision, Content content) {
        LocalDate savedOn = LocalDate.ofInstant(revision.savedAt(), ZoneOffset.UTC);
        LocalDate day = content.day().orElse(content instanceof Rig || content instanceof TakeSheet ? savedOn : null);
        String title = content.title();
        String search = searchText(content);
        OffsetDateTime savedAt = savedAt(revision);
        if (revision.number() == 1) {
            sql.insertInto(SHEET)
                    .set(SHEET.ID, revision.sheetId())
                    .set(SHEET.NOTEBOOK_ID, notebookId)
                    .set(SHEET.KIND, revision.kind().path())
                    .set(SHEET.HEAD_NUMBER, 1)
                    .set(SHEET.TITLE, title)
                    .set(SHEET.TITLE_ORDER, TitleOrder.key(title))
                    .set(SHEET.SEARCH_TEXT, search)
                    .set(SHEET.HAPPENED_ON, day)
                    .set(SHEET.PLAYED, content.played())
                    .set(SHEET.SAVED_AT, savedAt)
                    .execute();
            return;
        }
        int updated = sql.update(SHEET)
                .set(SHEET.HEAD_NUMBER, revision.number())
                .set(SHEET.TITLE, title)
                .set(SHEET.TITLE_ORDER, TitleOrder.key(title))
                .set(SHEET.SEARCH_TEXT, search)
                .set(SHEET.HAPPENED_ON, day)
                .set(SHEET.PLAYED, content.played())
                .set(SHEET.SAVED_AT, savedAt)
                .where(SHEET.ID.eq(revision.sheetId()))
                .and(SHEET.NOTEBOOK_ID.eq(notebookId))
                .and(SHEET.HEAD_NUMBER.eq(revision.number() - 1))
                .execute();
        if (updated != 1) {
            throw new IllegalStateException("revision " + revision.number() + " does not follow the newest");
        }
    }

    private static String searchText(Content content) {
        String text = Stream.concat(Stream.of(content.title()), content.searchWords())
                .collect(Collectors.joining("\n"))
                .toLowerCase(Locale.ROOT);
        return Words.shortened(text, SEARCH_LENGTH - 1);
    }

    private static OffsetDateTime savedAt(Revision revision) {
        return OffsetDateTime.ofInstant(revision.savedAt(), ZoneOffset.UTC);
    }

    private void writeRevision(Revision revision) {
        sql.insertInto(REVISION)
                .set(REVISION.NOTEBOOK_ID, notebookId)
                .set(REVISION.SHEET_ID, revision.sheetId())
                .set(REVISION.REVISION_NUMBER, revision.number())
                .set(REVISION.PARENT_NUMBER, revision.parent().orElse(null))
                .set(REVISION.CONTENT_FORMAT, CONTENT_FORMAT)
                .set(REVISION.CONTENT, ContentJson.canonical(revision.json()))
                .set(REVISION.CONTENT_SHA256, revision.sha256())
                .set(REVISION.SAVED_AT, savedAt(revision))
                .set(REVISION.SAVED_BY, revision.savedBy())
                .set(REVISION.REASON, revision.reason())
                .execute();
    }

    private void writeStyles(UUID sheetId, Content content) {
        sql.deleteFrom(SHEET_STYLE)
                .where(SHEET_STYLE.NOTEBOOK_ID.eq(notebookId))
                .and(SHEET_STYLE.SHEET_ID.eq(sheetId))
                .execute();
        for (String style : content.styles()) {
            sql.insertInto(SHEET_STYLE)
                    .set(SHEET_STYLE.NOTEBOOK_ID, notebookId)
                    .set(SHEET_STYLE.SHEET_ID, sheetId)
                    .set(SHEET_STYLE.STYLE, style)
                    .execute();
        }
    }

    void writeLinks(UUID sheetId, Content content) {
        sql.deleteFrom(SHEET_LINK)
                .where(SHEET_LINK.NOTEBOOK_ID.eq(notebookId))
                .and(SHEET_LINK.FROM_ID.eq(sheetId))
                .execute();
        content.links().forEach((place, link) -> sql.insertInto(SHEET_LINK)
                .set(SHEET_LINK.NOTEBOOK_ID, notebookId)
                .set(SHEET_LINK.FROM_ID, sheetId)
                .set(SHEET_LINK.PLACE, place)
                .set(SHEET_LINK.RELATION, link.relation().name())
                .set(SHEET_LINK.TO_ID, link.to().id())
                .set(SHEET_LINK.TO_NUMBER, link.to().revision())
                .execute());
    }

    private void writeStrings(Revision revision, Rig rig) {
        rig.assignments().forEach((string, assignment) -> sql.insertInto(RIG_STRING)
                .set(RIG_STRING.NOTEBOOK_ID, notebookId)
                .set(RIG_STRING.RIG_ID, revision.sheetId())
                .set(RIG_STRING.REVISION_NUMBER, revision.number())
                .set(RIG_STRING.STRING_NUMBER, Integer.parseInt(string))
                .set(RIG_STRING.INPUT_NUMBER, assignment.input())
                .set(RIG_STRING.SENSITIVITY, assignment.sensitivity())
                .set(RIG_STRING.TRIM_DECIBELS, assignment.trimDecibels())
                .set(RIG_STRING.SET_ON, rig.date())
                .execute());
    }
}
