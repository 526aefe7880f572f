package rosinbook.store;

import static org.jooq.impl.DSL.count;
import static org.jooq.impl.DSL.countDistinct;
import static org.jooq.impl.DSL.lower;
import static org.jooq.impl.DSL.max;
import static org.jooq.impl.DSL.row;
import static rosinbook.store.schema.Tables.REVISION;
import static rosinbook.store.schema.Tables.RIG_STRING;
import static rosinbook.store.schema.Tables.SHEET;
import static rosinbook.store.schema.Tables.SHEET_LINK;
import static rosinbook.store.schema.Tables.SHEET_STYLE;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.SelectConditionStep;
import org.jooq.SelectField;
import org.jooq.impl.DSL;
import rosinbook.notebook.Blob;
import rosinbook.notebook.Content;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Revision;

/** One notebook's sheets within one database transaction. */
final class DatabasePages implements Pages {
    private final DSLContext sql;
    private final UUID notebookId;

    DatabasePages(DSLContext sql, UUID notebookId) {
        this.sql = sql;
        this.notebookId = notebookId;
    }

    @Override
    public Optional<Revision> newest(UUID sheetId) {
        return newestWhere(SHEET.ID.eq(sheetId)).fetchOptional(RevisionRow::read);
    }

    @Override
    public Optional<Revision> newestForSaving(UUID sheetId) {
        sql.select(SHEET.ID)
                .from(SHEET)
                .where(SHEET.ID.eq(sheetId).and(SHEET.NOTEBOOK_ID.eq(notebookId)))
                .forUpdate()
                .fetch();
        return newest(sheetId);
    }

    private SelectConditionStep<Record> newestWhere(Condition condition) {
        return sql.select(RevisionRow.COLUMNS)
                .from(SHEET)
                .join(REVISION)
                .on(REVISION.SHEET_ID.eq(SHEET.ID).and(REVISION.REVISION_NUMBER.eq(SHEET.HEAD_NUMBER)))
                .where(SHEET.NOTEBOOK_ID.eq(notebookId))
                .and(condition);
    }

    @Override
    public Optional<Revision> revision(UUID sheetId, int number) {
        return sql.select(RevisionRow.COLUMNS)
                .from(REVISION)
                .join(SHEET)
                .on(SHEET.ID.eq(REVISION.SHEET_ID))
                .where(REVISION.NOTEBOOK_ID.eq(notebookId))
                .and(REVISION.SHEET_ID.eq(sheetId))
                .and(REVISION.REVISION_NUMBER.eq(number))
                .fetchOptional(RevisionRow::read);
    }

    @Override
    public void append(Revision revision, Content content) {
        new RevisionWriter(sql, notebookId).append(revision, content);
    }

    @Override
    public Page<Revision> list(Query query) {
        Condition condition = DSL.noCondition();
        if (query.kind().isPresent()) {
            condition = condition.and(SHEET.KIND.eq(query.kind().get().path()));
        }
        for (String word : query.words().toLowerCase(Locale.ROOT).strip().split("\\s+")) {
            if (!word.isEmpty()) {
                condition = condition.and(SHEET.SEARCH_TEXT.contains(word));
            }
        }
        if (query.style().isPresent()) {
            condition = condition.and(SHEET.ID.in(sql.select(SHEET_STYLE.SHEET_ID)
                    .from(SHEET_STYLE)
                    .where(SHEET_STYLE.NOTEBOOK_ID.eq(notebookId))
                    .and(SHEET_STYLE.STYLE.eq(query.style().get()))));
        }
        return query.kind().filter(DatabasePages::isByDay).isPresent()
                ? byDay(condition, query)
                : byTitle(condition, query);
    }

    private static boolean isByDay(Kind kind) {
        return switch (kind) {
            case RIGS, SETLISTS, LOG, TAKES -> true;
            case INSTRUMENTS, SYNTHS, PIECES, RECIPES -> false;
        };
    }

    private Page<Revision> byTitle(Condition condition, Query query) {
        Condition from = query.after()
                .map(Cursor::parse)
                .map(cursor -> row(lower(SHEET.TITLE), SHEET.ID).gt(row(cursor.key(), cursor.id())))
                .orElse(DSL.noCondition());
        List<Record> rows = new ArrayList<>(newestWhere(condition.and(from))
                .orderBy(lower(SHEET.TITLE), SHEET.ID)
                .limit(query.limit() + 1)
                .fetch());
        return page(rows, query.limit(), last -> last.get(SHEET.TITLE).toLowerCase(Locale.ROOT));
    }

    private Page<Revision> byDay(Condition condition, Query query) {
        Condition from = query.after()
                .map(Cursor::parse)
                .map(cursor -> row(SHEET.HAPPENED_ON, SHEET.ID).lt(row(cursor.day(), cursor.id())))
                .orElse(DSL.noCondition());
        List<Record> rows = new ArrayList<>(newestWhere(condition.and(from))
                .orderBy(SHEET.HAPPENED_ON.desc(), SHEET.ID.desc())
                .limit(query.limit() + 1)
                .fetch());
        return page(rows, query.limit(), last -> last.get(SHEET.HAPPENED_ON).toString());
    }

    private static Page<Revision> page(
            List<Record> rows, int limit, java.util.function.Function<Record, String> sortKey) {
        boolean more = rows.size() > limit;
        List<Record> shown = more ? rows.subList(0, limit) : rows;
        Optional<String> next = Optional.empty();
        if (more) {
            Record last = shown.get(limit - 1);
            next = Optional.of(new Cursor(sortKey.apply(last), last.get(SHEET.ID)).toString());
        }
        return new Page<>(shown.stream().map(RevisionRow::read).toList(), next);
    }

    @Override
    public Page<Revision> history(UUID sheetId, int limit, Optional<Integer> below) {
        Condition from = below.map(REVISION.REVISION_NUMBER::lt).orElse(DSL.noCondition());
        List<Revision> found = sql.select(RevisionRow.COLUMNS)
                .from(REVISION)
                .join(SHEET)
                .on(SHEET.ID.eq(REVISION.SHEET_ID))
                .where(REVISION.NOTEBOOK_ID.eq(notebookId))
                .and(REVISION.SHEET_ID.eq(sheetId))
                .and(from)
                .orderBy(REVISION.REVISION_NUMBER.desc())
                .limit(limit + 1)
                .fetch(RevisionRow::read);
        boolean more = found.size() > limit;
        List<Revision> shown = more ? found.subList(0, limit) : found;
        Optional<String> next =
                more ? Optional.of(Integer.toString(shown.get(limit - 1).number())) : Optional.empty();
        return new Page<>(shown, next);
    }

    @Override
    public List<Use> usedBy(UUID sheetId) {
        return sql.select(SHEET.ID, SHEET.KIND, SHEET.TITLE, SHEET_LINK.RELATION, max(SHEET_LINK.TO_NUMBER))
                .from(SHEET_LINK)
                .join(SHEET)
                .on(SHEET.ID.eq(SHEET_LINK.FROM_ID))
                .where(SHEET_LINK.NOTEBOOK_ID.eq(notebookId))
                .and(SHEET_LINK.TO_ID.eq(sheetId))
                .groupBy(SHEET.ID, SHEET.KIND, SHEET.TITLE, SHEET_LINK.RELATION)
                .orderBy(SHEET.KIND, SHEET.TITLE, SHEET.ID)
                .fetch(found -> new Use(
                        found.value1(),
                        kind(found.value2()),
                        found.value3(),
                        Content.Relation.valueOf(found.value4()),
                        Optional.ofNullable(found.value5())));
    }

    static Kind kind(String path) {
        return Kind.ofPath(path).orElseThrow(() -> new IllegalStateException("unknown kind in the database"));
    }

    @Override
    public Map<String, Integer> styles() {
        return new TreeMap<>(sql.select(SHEET_STYLE.STYLE, count())
                .from(SHEET_STYLE)
                .where(SHEET_STYLE.NOTEBOOK_ID.eq(notebookId))
                .groupBy(SHEET_STYLE.STYLE)
                .fetchMap(SHEET_STYLE.STYLE, count()));
    }

    @Override
    public Map<Kind, Integer> counts() {
        Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
        sql.select(SHEET.KIND, count())
                .from(SHEET)
                .where(SHEET.NOTEBOOK_ID.eq(notebookId))
                .groupBy(SHEET.KIND)
                .forEach(found -> counts.put(kind(found.value1()), found.value2()));
        return counts;
    }

    @Override
    public Map<UUID, LocalDate> lastPlayed(Collection<UUID> ids) {
        SelectField<LocalDate> last = max(SHEET.HAPPENED_ON);
        return sql.select(SHEET_LINK.TO_ID, last)
                .from(SHEET_LINK)
                .join(SHEET)
                .on(SHEET.ID.eq(SHEET_LINK.FROM_ID))
                .where(SHEET_LINK.NOTEBOOK_ID.eq(notebookId))
                .and(SHEET_LINK.TO_ID.in(ids))
                .and(SHEET.PLAYED)
                .groupBy(SHEET_LINK.TO_ID)
                .fetchMap(found -> found.value1(), found -> found.value2());
    }

    @Override
    public Map<UUID, Integer> useCounts(Content.Relation relation, Kind kind, Collection<UUID> ids) {
        SelectField<Integer> uses = countDistinct(SHEET.ID);
        return sql.select(SHEET_LINK.TO_ID, uses)
                .from(SHEET_LINK)
                .join(SHEET)
                .on(SHEET.ID.eq(SHEET_LINK.FROM_ID))
                .where(SHEET_LINK.NOTEBOOK_ID.eq(notebookId))
                .and(SHEET_LINK.TO_ID.in(ids))
                .and(SHEET_LINK.RELATION.eq(relation.name()))
                .and(SHEET.KIND.eq(kind.path()))
                .groupBy(SHEET_LINK.TO_ID)
                .fetchMap(found -> found.value1(), found -> found.value2());
    }

    @Override
    public Map<Integer, List<StringSetting>> stringHistory(UUID rigId) {
        Map<Integer, List<StringSetting>> history = new TreeMap<>();
        sql.select(RIG_STRING.asterisk(), REVISION.SAVED_AT, RIG_STRING.SET_ON)
                .from(RIG_STRING)
                .join(REVISION)
                .on(REVISION.SHEET_ID
                        .eq(RIG_STRING.RIG_ID)
                        .and(REVISION.REVISION_NUMBER.eq(RIG_STRING.REVISION_NUMBER)))
                .where(RIG_STRING.NOTEBOOK_ID.eq(notebookId))
                .and(RIG_STRING.RIG_ID.eq(rigId))
                .orderBy(RIG_STRING.STRING_NUMBER, RIG_STRING.REVISION_NUMBER)
                .forEach(found -> history.computeIfAbsent(
                                found.get(RIG_STRING.STRING_NUMBER), string -> new ArrayList<>())
                        .add(new StringSetting(
                                found.get(RIG_STRING.REVISION_NUMBER),
                                found.get(REVISION.SAVED_AT).toInstant(),
                                Optional.ofNullable(found.get(RIG_STRING.SET_ON)),
                                Optional.ofNullable(found.get(RIG_STRING.INPUT_NUMBER)),
                                Optional.ofNullable(found.get(RIG_STRING.SENSITIVITY)),
                                found.get(RIG_STRING.TRIM_DECIBELS))));
        return history;
    }

    @Override
    public boolean holds(Blob blob) {
        return new BlobTable(sql, notebookId).holds(blob);
    }

    @Override
    public Optional<byte[]> read(Blob blob) {
        return new BlobTable(sql, notebookId).read(blob);
    }

    @Override
    public void keep(Blob blob, byte[] bytes) {
        new BlobTable(sql, notebookId).keep(blob, bytes);
    }

    @Override
    public List<Revision> setlists(Set<Boolean> played, LocalDate fromInclusive, LocalDate toInclusive, int limit) {
        return newestWhere(SHEET.KIND
                        .eq(Kind.SETLISTS.path())
                        .and(SHEET.PLAYED.in(played))
                        .and(SHEET.HAPPENED_ON.between(fromInclusive, toInclusive)))
                .orderBy(SHEET.HAPPENED_ON.desc(), SHEET.SAVED_AT.desc(), SHEET.ID.desc())
                .limit(limit)
                .fetch(RevisionRow::read);
    }
}
