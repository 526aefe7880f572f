package rosinbook.store;

import static rosinbook.store.schema.Tables.REVISION;
import static rosinbook.store.schema.Tables.RIG_STRING;
import static rosinbook.store.schema.Tables.SHEET;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jooq.BatchBindStep;
import org.jooq.DSLContext;
import rosinbook.example.ExampleSeason;
import rosinbook.notebook.Content;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Rig;

/**
 * Fills a notebook as many years would: the example season with a long history, and many more pieces with a short one.
 *
 * <p>What is newest stays as the example wrote it, so that pages show the same however long the history is.
 */
public final class LongHistory {
    private static final int REVISIONS_OF_A_PIECE = 40;
    private static final OffsetDateTime SAVED_AT = OffsetDateTime.of(2026, 11, 1, 20, 0, 0, 0, ZoneOffset.UTC);

    private final DSLContext sql;
    private final UUID notebookId = DatabaseSheetStore.ONLY_NOTEBOOK;

    private LongHistory(DSLContext sql) {
        this.sql = sql;
    }

    /**
     * {@code LongHistory PLACE REVISIONS}: a folder for H2, or {@code jdbc:postgresql://…} with user and password in
     * ROSINBOOK_DATABASE_USER and ROSINBOOK_DATABASE_PASSWORD.
     */
    public static void main(String[] arguments) {
        int revisions = Integer.parseInt(arguments[1]);
        boolean isPostgres = arguments[0].startsWith("jdbc:");
        try (Database database = isPostgres
                ? Database.postgresql(
                        arguments[0],
                        System.getenv("ROSINBOOK_DATABASE_USER"),
                        System.getenv("ROSINBOOK_DATABASE_PASSWORD"))
                : Database.inFolder(Path.of(arguments[0]))) {
            write(database, revisions, revisions / 2 / REVISIONS_OF_A_PIECE);
            System.out.println(count(database) + " revisions");
        }
    }

    /** Writes the example, more pieces, and so many revisions in all, half of them of the example's own sheets. */
    public static void write(Database database, int revisions, int morePieces) {
        DatabaseSheetStore store = DatabaseSheetStore.onlyNotebook(database, Instant.now());
        ExampleSeason.writeInto(store, LocalDate.of(2026, 11, 19));
        List<UUID> example = database.look(
                sql -> sql.select(SHEET.ID).from(SHEET).orderBy(SHEET.ID).fetch(SHEET.ID));
        int left = revisions - count(database);
        lengthen(database, example, left / 2);
        List<UUID> pieces = database.change(sql -> new LongHistory(sql).addPieces(morePieces));
        lengthen(database, pieces, revisions - count(database));
    }

    static int count(Database database) {
        return database.look(sql -> sql.fetchCount(REVISION));
    }

    /** Some sheets are changed at every rehearsal, most now and then: every tenth gets two fifths of all. */
    private static void lengthen(Database database, List<UUID> sheets, int revisions) {
        if (sheets.isEmpty()) {
            return;
        }
        List<UUID> busy = new ArrayList<>();
        List<UUID> quiet = new ArrayList<>();
        for (int i = 0; i < sheets.size(); i++) {
            (i % 10 == 0 ? busy : quiet).add(sheets.get(i));
        }
        share(database, busy, quiet.isEmpty() ? revisions : revisions * 2 / 5);
        share(database, quiet, revisions - revisions * 2 / 5);
    }

    private static void share(Database database, List<UUID> sheets, int revisions) {
        int done = 0;
        for (int i = 0; i < sheets.size(); i++) {
            UUID sheet = sheets.get(i);
            int goal = (int) ((long) revisions * (i + 1) / sheets.size());
            int more = goal - done;
            done = goal;
            database.change(sql -> {
                new LongHistory(sql).lengthen(sheet, more);
                return null;
            });
        }
    }

    private List<UUID> addPieces(int count) {
        RevisionWriter writer = new RevisionWriter(sql, notebookId);
        List<UUID> ids = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            ObjectNode json = ContentJson.strict().createObjectNode();
            json.put("title", "Piece " + Integer.toString(i * 7919 % 100_003, 36) + " of the long winter");
            json.put("composer", "traditional").put("key", "D mixolydian").put("meter", "6/8");
            json.put("tempoBpm", 60 + i % 120).put("notes", "Second time through an octave down.");
            json.putArray("styles").add(i % 3 == 0 ? "jig" : "reel");
            Content content = ContentJson.read(Kind.PIECES, json);
            UUID id = new UUID(0x5eed_0000_0000_4000L, 0x8000_0000_0000_0000L + i);
            writer.append(revision(id, Kind.PIECES, 1, ContentJson.tree(content)), content);
            ids.add(id);
        }
        return ids;
    }

    private static Revision revision(UUID id, Kind kind, int number, ObjectNode json) {
        return new Revision(
                id,
                kind,
                number,
                number == 1 ? Optional.empty() : Optional.of(number - 1),
                json,
                ContentJson.sha256(ContentJson.canonical(json)),
                SAVED_AT.toInstant(),
                "Mira",
                "after rehearsal");
    }

    /** Appends revisions whose notes differ; the last is as the newest was. */
    private void lengthen(UUID sheet, int more) {
        if (more < 1) {
            return;
        }
        Revision newest = new DatabasePages(sql, notebookId).newest(sheet).orElseThrow();
        BatchBindStep revisions = sql.batch(sql.insertInto(
                        REVISION,
                        REVISION.NOTEBOOK_ID,
                        REVISION.SHEET_ID,
                        REVISION.REVISION_NUMBER,
                        REVISION.PARENT_NUMBER,
                        REVISION.CONTENT_FORMAT,
                        REVISION.CONTENT,
                        REVISION.CONTENT_SHA256,
                        REVISION.SAVED_AT,
                        REVISION.SAVED_BY,
                        REVISION.REASON)
                .values((UUID) null, null, null, null, null, null, null, null, null, null));
        int last = newest.number() + more;
        for (int number = newest.number() + 1; number <= last; number++) {
            ObjectNode json = number == last ? newest.json() : changed(newest, number);
            String content = ContentJson.canonical(json);
            revisions.bind(
                    notebookId,
                    sheet,
                    number,
                    number - 1,
                    1,
                    content,
                    ContentJson.sha256(content),
                    SAVED_AT.plusSeconds(number),
                    "Mira",
                    "after rehearsal");
        }
        revisions.execute();
        if (newest.content() instanceof Rig rig) {
            lengthenStrings(newest, rig, last);
        }
        sql.update(SHEET)
                .set(SHEET.HEAD_NUMBER, last)
                .where(SHEET.ID.eq(sheet))
                .and(SHEET.NOTEBOOK_ID.eq(notebookId))
                .execute();
    }

    private static ObjectNode changed(Revision newest, int number) {
        ObjectNode json = newest.json().deepCopy();
        switch (newest.kind()) {
            case RECIPES -> json.withObject("/settings").put("notes", "As of evening " + number + ".");
            case LOG -> json.put("text", "As of evening " + number + ".");
            case SYNTHS, INSTRUMENTS -> json.put("title", newest.content().title() + " " + number);
            case PIECES, RIGS, SETLISTS, TAKES -> json.put("notes", "As of evening " + number + ".");
        }
        return json;
    }

    private void lengthenStrings(Revision newest, Rig rig, int last) {
        BatchBindStep strings = sql.batch(sql.insertInto(
                        RIG_STRING,
                        RIG_STRING.NOTEBOOK_ID,
                        RIG_STRING.RIG_ID,
                        RIG_STRING.REVISION_NUMBER,
                        RIG_STRING.STRING_NUMBER,
                        RIG_STRING.INPUT_NUMBER,
                        RIG_STRING.SENSITIVITY,
                        RIG_STRING.TRIM_DECIBELS,
                        RIG_STRING.SET_ON)
                .values((UUID) null, null, null, null, null, null, null, null));
        for (int number = newest.number() + 1; number <= last; number++) {
            int revision = number;
            rig.assignments()
                    .forEach((string, assignment) -> strings.bind(
                            notebookId,
                            newest.sheetId(),
                            revision,
                            Integer.parseInt(string),
                            assignment.input(),
                            assignment.sensitivity(),
                            assignment.trimDecibels(),
                            rig.date()));
        }
        strings.execute();
    }
}
