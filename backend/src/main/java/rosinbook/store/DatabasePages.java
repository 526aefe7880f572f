package rosinbook.store;

import static org.jooq.impl.DSL.count;
import static org.jooq.impl.DSL.countDistinct;
import static org.jooq.impl.DSL.field;
import static org.jooq.impl.DSL.max;
import static org.jooq.impl.DSL.name;
import static org.jooq.impl.DSL.row;
import static org.jooq.impl.DSL.unnest;
import static org.jooq.impl.DSL.val;
import static rosinbook.store.schema.Tables.REVISION;
import static rosinbook.store.schema.Tables.RIG_STRING;
import static rosinbook.store.schema.Tables.SHEET;
import static rosinbook.store.schema.Tables.SHEET_LINK;
import static rosinbook.store.schema.Tables.SHEET_STYLE;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.SQLDialect;
import org.jooq.Select;
import org.jooq.SelectConditionStep;
import org.jooq.SelectField;
import org.jooq.SelectForUpdateStep;
import org.jooq.Table;
import org.jooq.impl.DSL;
import rosinbook.notebook.Blob;
import rosinbook.notebook.Content;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;

/** One notebook's sheets within one database transaction. */
class DatabasePages implements Pages {
    private static final int MOST_AT_ONCE = 50;

    private static final String ASKED = "asked";
    private static final Field<UUID> ASKED_ID = field(name(ASKED, "sheet_id"), UUID.class);

    private static final Condition FROM_SHEET =
            SHEET.NOTEBOOK_ID.eq(SHEET_LINK.NOTEBOOK_ID).and(SHEET.ID.eq(SHEET_LINK.FROM_ID));

    final UUID notebookId;
    private final DSLContext sql;

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
        lock(sql, sql.select(SHEET.ID).from(SHEET).where(SHEET.ID.eq(sheetId).and(SHEET.NOTEBOOK_ID.eq(notebookId))));
        return newest(sheetId);
    }

    /** The weaker lock leaves others free to name these rows meanwhile; the stronger one makes two savers a deadlock. */
    static void lock(DSLContext sql, SelectForUpdateStep<?> rows) {
        (sql.family() == SQLDialect.POSTGRES ? rows.forNoKeyUpdate() : rows.forUpdate()).fetch();
    }

    private SelectConditionStep<Record> newestWhere(Condition condition) {
        return sql.select(RevisionRow.COLUMNS)
                .from(SHEET)
                .join(REVISION)
                .on(RevisionRow.OF_SHEET.and(REVISION.REVISION_NUMBER.eq(SHEET.HEAD_NUMBER)))
                .where(SHEET.NOTEBOOK_ID.eq(notebookId))
                .and(condition);
    }

    /** Which revision of each sheet is the newest, without reading it. */
    private SelectConditionStep<Record> heads(Condition condition) {
        return sql.select(List.of(SHEET.ID, SHEET.HEAD_NUMBER, SHEET.TITLE, SHEET.HAPPENED_ON))
                .from(SHEET)
                .where(SHEET.NOTEBOOK_ID.eq(notebookId))
                .and(condition);
    }

    /** The newest revision's number of each of these that there is. */
    final Map<UUID, Integer> headNumbers(Collection<UUID> sheetIds) {
        return sql.select(SHEET.ID, SHEET.HEAD_NUMBER)
                .from(asked(sheetIds))
                .join(SHEET)
                .on(SHEET.ID.eq(ASKED_ID))
                .where(SHEET.NOTEBOOK_ID.eq(notebookId))
                .fetchMap(SHEET.ID, SHEET.HEAD_NUMBER);
    }

    /**
     * A table of these ids, to be joined, so that each is looked up by its key; H2 would go through the whole notebook for
     * a list of them. As one bound array the statement is the same however many there are, and is prepared once.
     */
    private static Table<?> asked(Collection<UUID> ids) {
        return unnest(val(ids.toArray(UUID[]::new)))
                .as(ASKED, ASKED_ID.getUnqualifiedName().last());
    }

    private static Reference head(Record found) {
        return new Reference(found.get(SHEET.ID), found.get(SHEET.HEAD_NUMBER));
    }

    /** These exact revisions, all of which there are, in this order. */
    List<Revision> revisionsOf(List<Reference> exact) {
        Map<Reference, Revision> found = new HashMap<>();
        readRevisions(exact).keySet().forEach(revision -> found.put(revision.reference(), revision));
        return exact.stream().map(found::get).toList();
    }

    /** Reads exact revisions, with how many letters their contents have; those that are not there are left out. */
    final Map<Revision, Integer> readRevisions(Collection<Reference> exact) {
        Map<Revision, Integer> found = new LinkedHashMap<>();
        List<Reference> left = List.copyOf(exact);
        while (!left.isEmpty()) {
            List<Reference> now = left.subList(0, Math.min(left.size(), MOST_AT_ONCE));
            left = left.subList(now.size(), left.size());
            readTogether(now, found);
        }
        return found;
    }

    /** One part a revision, each found by its key, whatever a planner makes of pairs of keys. */
    private void readTogether(List<Reference> exact, Map<Revision, Integer> found) {
        Select<Record> parts = null;
        for (Reference reference : exact) {
            Select<Record> part = exactly(reference.id(), reference.revision());
            parts = parts == null ? part : parts.unionAll(part);
        }
        if (parts != null) {
            parts.fetch()
                    .forEach(row -> found.put(
                            RevisionRow.read(row), row.get(REVISION.CONTENT).length()));
        }
    }

    private SelectConditionStep<Record> exactly(UUID sheetId, int number) {
        return sql.select(RevisionRow.COLUMNS)
                .from(REVISION)
                .join(SHEET)
                .on(RevisionRow.OF_SHEET)
                .where(REVISION.NOTEBOOK_ID.eq(notebookId))
                .and(REVISION.SHEET_ID.eq(sheetId))
                .and(REVISION.REVISION_NUMBER.eq(number));
    }

    @Override
    public Optional<Revision> revision(UUID sheetId, int number) {
        return exactly(sheetId, number).fetchOptional(RevisionRow::read);
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
                .map(cursor -> {
                    String key = TitleOrder.key(cursor.key());
                    return SHEET.TITLE_ORDER
                            .ge(key)
                            .and(row(SHEET.TITLE_ORDER, SHEET.ID).gt(row(key, cursor.id())));
                })
                .orElse(DSL.noCondition());
        List<Record> rows = new ArrayList<>(heads(condition.and(from))
                .orderBy(inOneKind(query, SHEET.TITLE_ORDER, SHEET.ID))
                .limit(query.limit() + 1)
                .fetch());
        return page(rows, query.limit(), last -> TitleOrder.text(last.get(SHEET.TITLE)));
    }

    /** Within one kind the index is in this order; H2 only sees that if the order names what is the same in all of them. */
    private static List<Field<?>> inOneKind(Query query, Field<?>... order) {
        Stream<Field<?>> same = query.kind().isPresent() ? Stream.of(SHEET.NOTEBOOK_ID, SHEET.KIND) : Stream.empty();
        return Stream.concat(same, Stream.of(order)).toList();
    }

    private Page<Revision> byDay(Condition condition, Query query) {
        Condition from = query.after()
                .map(Cursor::parse)
                .map(cursor -> row(SHEET.HAPPENED_ON, SHEET.ID).lt(row(cursor.day(), cursor.id())))
                .orElse(DSL.noCondition());
        List<Record> rows = new ArrayList<>(heads(condition.and(from))
                .orderBy(SHEET.HAPPENED_ON.desc(), SHEET.ID.desc())
                .limit(query.limit() + 1)
                .fetch());
        return page(rows, query.limit(), last -> last.get(SHEET.HAPPENED_ON).toString());
    }

    private Page<Revision> page(List<Record> rows, int limit, java.util.function.Function<Record, String> sortKey) {
        boolean more = rows.size() > limit;
        List<Record> shown = more ? rows.subList(0, limit) : rows;
        Optional<String> next = Optional.empty();
        if (more) {
            Record last = shown.get(limit - 1);
            next = Optional.of(new Cursor(sortKey.apply(last), last.get(SHEET.ID)).toString());
        }
        return new Page<>(revisionsOf(shown.stream().map(DatabasePages::head).toList()), next);
    }

    @Override
    public Page<Revision> history(UUID sheetId, int limit, Optional<Integer> below) {
        // Numbers have no gaps, and H2 reads no index backwards: it would go through all that are older, too.
        int pastNewest = headNumbers(List.of(sheetId)).getOrDefault(sheetId, 0) + 1;
        int end = Math.min(below.orElse(pastNewest), pastNewest);
        List<Revision> found = sql.select(RevisionRow.COLUMNS)
                .from(REVISION)
                .join(SHEET)
                .on(RevisionRow.OF_SHEET)
                .where(REVISION.NOTEBOOK_ID.eq(notebookId))
                .and(REVISION.SHEET_ID.eq(sheetId))
                .and(REVISION.REVISION_NUMBER.lt(end))
                .and(REVISION.REVISION_NUMBER.ge(Math.max(0, end - limit - 1)))
                .orderBy(REVISION.REVISION_NUMBER.desc())
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
                .on(FROM_SHEET)
                .where(SHEET_LINK.NOTEBOOK_ID.eq(notebookId))
                .and(SHEET_LINK.TO_ID.eq(sheetId))
                .groupBy(SHEET.ID, SHEET.KIND, SHEET.TITLE, SHEET.TITLE_ORDER, SHEET_LINK.RELATION)
                .orderBy(SHEET.KIND, SHEET.TITLE_ORDER, SHEET.ID, SHEET_LINK.RELATION)
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
                .from(asked(ids))
                .join(SHEET_LINK)
                .on(SHEET_LINK.TO_ID.eq(ASKED_ID))
                .join(SHEET)
                .on(FROM_SHEET)
                .where(SHEET_LINK.NOTEBOOK_ID.eq(notebookId))
                .and(SHEET.PLAYED)
                .groupBy(SHEET_LINK.TO_ID)
                .fetchMap(found -> found.value1(), found -> found.value2());
    }

    @Override
    public Map<UUID, Integer> useCounts(Content.Relation relation, Kind kind, Collection<UUID> ids) {
        SelectField<Integer> uses = countDistinct(SHEET.ID);
        return sql.select(SHEET_LINK.TO_ID, uses)
                .from(asked(ids))
                .join(SHEET_LINK)
                .on(SHEET_LINK.TO_ID.eq(ASKED_ID))
                .join(SHEET)
                .on(FROM_SHEET)
                .where(SHEET_LINK.NOTEBOOK_ID.eq(notebookId))
                .and(SHEET_LINK.RELATION.eq(relation.name()))
                .and(SHEET.KIND.eq(kind.path()))
                .groupBy(SHEET_LINK.TO_ID)
                .fetchMap(found -> found.value1(), found -> found.value2());
    }

    @Override
    public Map<Integer, List<StringSetting>> stringHistory(UUID rigId) {
        Map<Integer, List<StringSetting>> history = new TreeMap<>();
        sql.select(RIG_STRING.asterisk(), REVISION.SAVED_AT)
                .from(RIG_STRING)
                .join(REVISION)
                .on(REVISION.NOTEBOOK_ID
                        .eq(RIG_STRING.NOTEBOOK_ID)
                        .and(REVISION.SHEET_ID.eq(RIG_STRING.RIG_ID))
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
        return revisionsOf(heads(SHEET.KIND
                        .eq(Kind.SETLISTS.path())
                        .and(SHEET.PLAYED.in(played))
                        .and(SHEET.HAPPENED_ON.between(fromInclusive, toInclusive)))
                .orderBy(SHEET.HAPPENED_ON.desc(), SHEET.SAVED_AT.desc(), SHEET.ID.desc())
                .limit(limit)
                .fetch(DatabasePages::head));
    }

    @Override
    public Optional<Revision> firstPlanned(LocalDate fromInclusive) {
        return revisionsOf(heads(SHEET.KIND
                                .eq(Kind.SETLISTS.path())
                                .and(SHEET.PLAYED.isFalse())
                                .and(SHEET.HAPPENED_ON.ge(fromInclusive)))
                        .orderBy(SHEET.HAPPENED_ON, SHEET.SAVED_AT, SHEET.ID)
                        .limit(1)
                        .fetch(DatabasePages::head))
                .stream()
                .findFirst();
    }
}
