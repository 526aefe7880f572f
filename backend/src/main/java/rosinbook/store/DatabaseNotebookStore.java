package rosinbook.store;

import static org.jooq.impl.DSL.select;
import static org.jooq.impl.DSL.val;
import static rosinbook.store.schema.Tables.NOTEBOOK;
import static rosinbook.store.schema.Tables.NOTEBOOK_MEMBER;
import static rosinbook.store.schema.Tables.PLAYER;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;
import rosinbook.access.LastOwner;
import rosinbook.access.Member;
import rosinbook.access.NotebookEntry;
import rosinbook.access.NotebookStore;
import rosinbook.access.Right;

/** Notebooks and their members in a database. */
public final class DatabaseNotebookStore implements NotebookStore {
    private final Database database;

    public DatabaseNotebookStore(Database database) {
        this.database = database;
    }

    @Override
    public List<NotebookEntry> ofPlayer(UUID playerId) {
        return database.look(sql -> entries(sql, playerId, DSL.noCondition()));
    }

    @Override
    public List<NotebookEntry> all() {
        return database.look(sql -> entries(sql, DSL.noCondition()));
    }

    @Override
    public Optional<NotebookEntry> find(UUID notebookId, UUID playerId) {
        return database.look(sql ->
                entries(sql, playerId, NOTEBOOK.ID.eq(notebookId)).stream().findFirst());
    }

    @Override
    public Optional<NotebookEntry> find(UUID notebookId) {
        return database.look(
                sql -> entries(sql, NOTEBOOK.ID.eq(notebookId)).stream().findFirst());
    }

    private static List<NotebookEntry> entries(DSLContext sql, UUID playerId, Condition condition) {
        List<Record> found = new ArrayList<>(sql.select(NOTEBOOK.fields())
                .select(NOTEBOOK_MEMBER.MAY)
                .from(NOTEBOOK)
                .join(NOTEBOOK_MEMBER)
                .on(NOTEBOOK_MEMBER.NOTEBOOK_ID.eq(NOTEBOOK.ID))
                .where(NOTEBOOK_MEMBER.PLAYER_ID.eq(playerId))
                .and(condition)
                .orderBy(NOTEBOOK.CREATED_AT, NOTEBOOK.ID)
                .fetch());
        return entries(sql, found);
    }

    private static List<NotebookEntry> entries(DSLContext sql, Condition condition) {
        List<Record> found = new ArrayList<>(sql.select(NOTEBOOK.fields())
                .select(val(Right.OWN.word()).as(NOTEBOOK_MEMBER.MAY))
                .from(NOTEBOOK)
                .where(condition)
                .orderBy(NOTEBOOK.CREATED_AT, NOTEBOOK.ID)
                .fetch());
        return entries(sql, found);
    }

    private static List<NotebookEntry> entries(DSLContext sql, List<Record> found) {
        List<UUID> ids = found.stream().map(each -> each.get(NOTEBOOK.ID)).toList();
        Map<UUID, List<String>> owners = sql.select(NOTEBOOK_MEMBER.NOTEBOOK_ID, PLAYER.NAME, PLAYER.ID)
                .from(NOTEBOOK_MEMBER)
                .join(PLAYER)
                .on(PLAYER.ID.eq(NOTEBOOK_MEMBER.PLAYER_ID))
                .where(NOTEBOOK_MEMBER.NOTEBOOK_ID.in(ids))
                .and(NOTEBOOK_MEMBER.MAY.eq(Right.OWN.word()))
                .fetch()
                .sortAsc(DatabaseAccessStore.BY_NAME)
                .intoGroups(NOTEBOOK_MEMBER.NOTEBOOK_ID, PLAYER.NAME);
        return found.stream()
                .map(each -> new NotebookEntry(
                        each.get(NOTEBOOK.ID),
                        each.get(NOTEBOOK.TITLE),
                        right(each.get("may", String.class)),
                        owners.getOrDefault(each.get(NOTEBOOK.ID), List.of())))
                .toList();
    }

    private static Right right(String word) {
        return Right.ofWord(word).orElseThrow(() -> new IllegalStateException("unknown right in the database"));
    }

    @Override
    public Optional<Right> right(UUID notebookId, UUID playerId) {
        return database.look(sql -> right(sql, notebookId, playerId));
    }

    private static Optional<Right> right(DSLContext sql, UUID notebookId, UUID playerId) {
        return sql.select(NOTEBOOK_MEMBER.MAY)
                .from(NOTEBOOK_MEMBER)
                .where(is(notebookId, playerId))
                .fetchOptional(found -> right(found.value1()));
    }

    private static Condition is(UUID notebookId, UUID playerId) {
        return NOTEBOOK_MEMBER.NOTEBOOK_ID.eq(notebookId).and(NOTEBOOK_MEMBER.PLAYER_ID.eq(playerId));
    }

    @Override
    public boolean exists(UUID notebookId) {
        return database.look(sql -> sql.fetchExists(NOTEBOOK, NOTEBOOK.ID.eq(notebookId)));
    }

    @Override
    public void add(UUID notebookId, String title, Optional<UUID> ownerId, Instant when) {
        database.change(sql -> add(sql, notebookId, title, ownerId, when));
    }

    static int add(DSLContext sql, UUID notebookId, String title, Optional<UUID> ownerId, Instant when) {
        int added = sql.insertInto(NOTEBOOK)
                .set(NOTEBOOK.ID, notebookId)
                .set(NOTEBOOK.TITLE, title)
                .set(NOTEBOOK.CREATED_AT, DatabaseAccessStore.time(when))
                .execute();
        ownerId.ifPresent(owner -> let(sql, notebookId, owner, Right.OWN));
        return added;
    }

    private static void let(DSLContext sql, UUID notebookId, UUID playerId, Right may) {
        sql.deleteFrom(NOTEBOOK_MEMBER).where(is(notebookId, playerId)).execute();
        sql.insertInto(NOTEBOOK_MEMBER)
                .set(NOTEBOOK_MEMBER.NOTEBOOK_ID, notebookId)
                .set(NOTEBOOK_MEMBER.PLAYER_ID, playerId)
                .set(NOTEBOOK_MEMBER.MAY, may.word())
                .execute();
    }

    @Override
    public void rename(UUID notebookId, String title) {
        database.change(sql -> sql.update(NOTEBOOK)
                .set(NOTEBOOK.TITLE, title)
                .where(NOTEBOOK.ID.eq(notebookId))
                .execute());
    }

    @Override
    public List<Member> members(UUID notebookId) {
        return database.look(sql -> sql
                .select(PLAYER.fields())
                .select(NOTEBOOK_MEMBER.MAY)
                .from(NOTEBOOK_MEMBER)
                .join(PLAYER)
                .on(PLAYER.ID.eq(NOTEBOOK_MEMBER.PLAYER_ID))
                .where(NOTEBOOK_MEMBER.NOTEBOOK_ID.eq(notebookId))
                .fetch()
                .sortAsc(DatabaseAccessStore.BY_NAME)
                .map(found -> new Member(DatabaseAccessStore.player(found), right(found.get(NOTEBOOK_MEMBER.MAY))))
                .stream()
                .sorted(Comparator.comparing(Member::may).reversed())
                .toList());
    }

    @Override
    public boolean let(UUID notebookId, UUID playerId, Right may) {
        return database.change(sql -> {
            lock(sql, notebookId);
            if (!DatabaseAccessStore.isThere(sql, playerId)) {
                return false;
            }
            if (may != Right.OWN) {
                keepAnOwner(sql, notebookId, playerId);
            }
            let(sql, notebookId, playerId, may);
            return true;
        });
    }

    @Override
    public boolean remove(UUID notebookId, UUID playerId) {
        return database.change(sql -> {
            lock(sql, notebookId);
            keepAnOwner(sql, notebookId, playerId);
            return sql.deleteFrom(NOTEBOOK_MEMBER)
                            .where(is(notebookId, playerId))
                            .execute()
                    == 1;
        });
    }

    /** One change of members at a time: two owners must not each see the other one stay. */
    private static void lock(DSLContext sql, UUID notebookId) {
        DatabasePages.lock(sql, sql.select(NOTEBOOK.ID).from(NOTEBOOK).where(NOTEBOOK.ID.eq(notebookId)));
    }

    /** As {@link #lock}, of every notebook that a player owns. */
    static void lockOwned(DSLContext sql, UUID playerId) {
        DatabasePages.lock(
                sql,
                sql.select(NOTEBOOK.ID)
                        .from(NOTEBOOK)
                        .where(NOTEBOOK.ID.in(select(NOTEBOOK_MEMBER.NOTEBOOK_ID)
                                .from(NOTEBOOK_MEMBER)
                                .where(NOTEBOOK_MEMBER.PLAYER_ID.eq(playerId))
                                .and(NOTEBOOK_MEMBER.MAY.eq(Right.OWN.word()))))
                        .orderBy(NOTEBOOK.ID));
    }

    private static void keepAnOwner(DSLContext sql, UUID notebookId, UUID leavingId) {
        boolean owns =
                right(sql, notebookId, leavingId).filter(Right.OWN::equals).isPresent();
        if (owns
                && !sql.fetchExists(
                        NOTEBOOK_MEMBER, isOwnerBeside(leavingId).and(NOTEBOOK_MEMBER.NOTEBOOK_ID.eq(notebookId)))) {
            throw new LastOwner();
        }
    }

    private static Condition isOwnerBeside(UUID playerId) {
        return NOTEBOOK_MEMBER.MAY.eq(Right.OWN.word()).and(NOTEBOOK_MEMBER.PLAYER_ID.ne(playerId));
    }

    /** Makes the heir an owner of what nobody but this player owns. */
    static void bequeath(DSLContext sql, UUID playerId, UUID heirId) {
        sql.select(NOTEBOOK_MEMBER.NOTEBOOK_ID)
                .from(NOTEBOOK_MEMBER)
                .where(NOTEBOOK_MEMBER.PLAYER_ID.eq(playerId))
                .and(NOTEBOOK_MEMBER.MAY.eq(Right.OWN.word()))
                .and(NOTEBOOK_MEMBER.NOTEBOOK_ID.notIn(select(NOTEBOOK_MEMBER.NOTEBOOK_ID)
                        .from(NOTEBOOK_MEMBER)
                        .where(isOwnerBeside(playerId))))
                .forEach(found -> let(sql, found.value1(), heirId, Right.OWN));
    }
}
