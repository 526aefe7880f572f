package rosinbook.store;

import static rosinbook.store.schema.Tables.INVITATION;
import static rosinbook.store.schema.Tables.NOTEBOOK;
import static rosinbook.store.schema.Tables.NOTEBOOK_MEMBER;
import static rosinbook.store.schema.Tables.PLAYER;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.impl.DSL;
import rosinbook.access.AccessStore;
import rosinbook.access.Account;
import rosinbook.access.NameTaken;
import rosinbook.access.Player;
import rosinbook.access.PlayerName;
import rosinbook.access.Right;
import rosinbook.access.Session;

/** Players, invitations and sessions in a database. */
public final class DatabaseAccessStore implements AccessStore {
    private static final Condition IS_OPEN = PLAYER.CLOSED_AT.isNull();

    /** As titles stand, and so the same whichever database sorts names how. */
    static final Comparator<Record> BY_NAME = Comparator.comparing(
                    (Record found) -> TitleOrder.key(found.get(PLAYER.NAME)))
            .thenComparing(found -> found.get(PLAYER.ID));

    private final Database database;

    public DatabaseAccessStore(Database database) {
        this.database = database;
    }

    static OffsetDateTime time(Instant instant) {
        return OffsetDateTime.ofInstant(instant, ZoneOffset.UTC);
    }

    static Player player(Record found) {
        return new Player(
                found.get(PLAYER.ID),
                new PlayerName(found.get(PLAYER.NAME)),
                found.get(PLAYER.KEEPER),
                found.get(PLAYER.PASSPHRASE_HASH) != null);
    }

    @Override
    public List<Player> players() {
        return database.look(sql ->
                sql.selectFrom(PLAYER).where(IS_OPEN).fetch().sortAsc(BY_NAME).map(DatabaseAccessStore::player));
    }

    @Override
    public Optional<Account> account(PlayerName name) {
        return account(PLAYER.NAME_LOWER.eq(name.lower()));
    }

    @Override
    public Optional<Account> account(UUID playerId) {
        return account(PLAYER.ID.eq(playerId));
    }

    @Override
    public Optional<Account> keeper() {
        return account(DSL.condition(PLAYER.KEEPER));
    }

    private Optional<Account> account(Condition condition) {
        return database.look(sql -> sql.selectFrom(PLAYER)
                .where(IS_OPEN.and(condition))
                .orderBy(PLAYER.CREATED_AT, PLAYER.ID)
                .limit(1)
                .fetchOptional(
                        found -> new Account(player(found), Optional.ofNullable(found.get(PLAYER.PASSPHRASE_HASH)))));
    }

    @Override
    public void addKeeper(Player keeper, String hash, Instant when) {
        database.change(sql -> {
            add(sql, keeper, Optional.of(hash), when);
            return sql.insertInto(
                            NOTEBOOK_MEMBER,
                            NOTEBOOK_MEMBER.NOTEBOOK_ID,
                            NOTEBOOK_MEMBER.PLAYER_ID,
                            NOTEBOOK_MEMBER.MAY)
                    .select(sql.select(NOTEBOOK.ID, DSL.val(keeper.id()), DSL.val(Right.OWN.word()))
                            .from(NOTEBOOK)
                            .where(NOTEBOOK.ID.notIn(sql.select(NOTEBOOK_MEMBER.NOTEBOOK_ID)
                                    .from(NOTEBOOK_MEMBER)
                                    .where(NOTEBOOK_MEMBER.MAY.eq(Right.OWN.word())))))
                    .execute();
        });
    }

    /** If two add the same name at once, the second is done again, and finds it here. */
    private static void add(DSLContext sql, Player player, Optional<String> hash, Instant when) {
        if (sql.fetchExists(PLAYER, PLAYER.NAME_LOWER.eq(player.name().lower()))) {
            throw new NameTaken(player.name());
        }
        sql.insertInto(PLAYER)
                .set(PLAYER.ID, player.id())
                .set(PLAYER.NAME, player.name().text())
                .set(PLAYER.NAME_LOWER, player.name().lower())
                .set(PLAYER.PASSPHRASE_HASH, hash.orElse(null))
                .set(PLAYER.KEEPER, player.isKeeper())
                .set(PLAYER.CREATED_AT, time(when))
                .execute();
    }

    @Override
    public void invite(Player player, String tokenSha256, Instant now, Instant endsAt) {
        database.change(sql -> {
            add(sql, player, Optional.empty(), now);
            return addInvitation(sql, player.id(), tokenSha256, endsAt);
        });
    }

    private static int addInvitation(DSLContext sql, UUID playerId, String tokenSha256, Instant endsAt) {
        return sql.insertInto(INVITATION)
                .set(INVITATION.TOKEN_SHA256, tokenSha256)
                .set(INVITATION.PLAYER_ID, playerId)
                .set(INVITATION.ENDS_AT, time(endsAt))
                .execute();
    }

    @Override
    public boolean inviteAgain(UUID playerId, String tokenSha256, Instant endsAt) {
        return database.change(sql -> {
            if (!isThere(sql, playerId)) {
                return false;
            }
            forgetInvitations(sql, playerId);
            return addInvitation(sql, playerId, tokenSha256, endsAt) == 1;
        });
    }

    /** Locks the account, so that it is not closed or invited again meanwhile. */
    static boolean isThere(DSLContext sql, UUID playerId) {
        return sql.select(PLAYER.ID)
                .from(PLAYER)
                .where(PLAYER.ID.eq(playerId).and(IS_OPEN))
                .forUpdate()
                .fetchOptional()
                .isPresent();
    }

    private static void forgetInvitations(DSLContext sql, UUID playerId) {
        sql.deleteFrom(INVITATION).where(INVITATION.PLAYER_ID.eq(playerId)).execute();
    }

    @Override
    public Optional<Player> invited(String tokenSha256, Instant now) {
        return database.look(sql -> invited(sql, tokenSha256, now));
    }

    private static Optional<Player> invited(DSLContext sql, String tokenSha256, Instant now) {
        return sql.select(PLAYER.fields())
                .from(INVITATION)
                .join(PLAYER)
                .on(PLAYER.ID.eq(INVITATION.PLAYER_ID))
                .where(INVITATION.TOKEN_SHA256.eq(tokenSha256))
                .and(INVITATION.ENDS_AT.gt(time(now)))
                .and(IS_OPEN)
                .fetchOptional(DatabaseAccessStore::player);
    }

    @Override
    public Optional<Player> join(String tokenSha256, String hash, Instant now) {
        return database.change(sql -> {
            Optional<Player> player = invited(sql, tokenSha256, now);
            int used = sql.deleteFrom(INVITATION)
                    .where(INVITATION.TOKEN_SHA256.eq(tokenSha256))
                    .execute();
            if (player.isEmpty() || used == 0) {
                return Optional.empty();
            }
            setHash(sql, player.get().id(), hash, Optional.empty());
            return player;
        });
    }

    @Override
    public void setHash(UUID playerId, String hash) {
        database.change(sql -> setHash(sql, playerId, hash, Optional.empty()));
    }

    @Override
    public boolean changeHash(UUID playerId, String provedHash, String hash, String sparedTokenSha256) {
        return database.change(sql -> isStill(sql, playerId, provedHash)
                && setHash(sql, playerId, hash, Optional.of(sparedTokenSha256)) == 1);
    }

    /** Whether that is the passphrase of an open account; locks the account, so that it is not changed meanwhile. */
    private static boolean isStill(DSLContext sql, UUID playerId, String hash) {
        return sql.select(PLAYER.ID)
                .from(PLAYER)
                .where(PLAYER.ID.eq(playerId))
                .and(PLAYER.PASSPHRASE_HASH.eq(hash))
                .and(IS_OPEN)
                .forUpdate()
                .fetchOptional()
                .isPresent();
    }

    /** The account first: a session that somebody began with the one before is there by then, or never is. */
    private static int setHash(DSLContext sql, UUID playerId, String hash, Optional<String> sparedTokenSha256) {
        if (isFirst(sql, playerId)) {
            addNotebook(sql, playerId);
        }
        int changed = sql.update(PLAYER)
                .set(PLAYER.PASSPHRASE_HASH, hash)
                .where(PLAYER.ID.eq(playerId))
                .execute();
        forgetInvitations(sql, playerId);
        new SessionTable(sql).endAllBut(playerId, sparedTokenSha256);
        return changed;
    }

    /** Whether an invited player had no passphrase until now; locks the account, so that only one who asks is told so. */
    private static boolean isFirst(DSLContext sql, UUID playerId) {
        return isThere(sql, playerId)
                && sql.fetchExists(
                        PLAYER,
                        PLAYER.ID.eq(playerId),
                        PLAYER.PASSPHRASE_HASH.isNull(),
                        DSL.condition(PLAYER.KEEPER).not());
    }

    /** One of the player's own, as old as the account. */
    private static void addNotebook(DSLContext sql, UUID playerId) {
        sql.select(PLAYER.NAME, PLAYER.CREATED_AT)
                .from(PLAYER)
                .where(PLAYER.ID.eq(playerId))
                .forEach(found -> DatabaseNotebookStore.add(
                        sql,
                        UUID.randomUUID(),
                        found.value1() + "'s notebook",
                        Optional.of(playerId),
                        found.value2().toInstant()));
    }

    @Override
    public boolean close(UUID playerId, Optional<UUID> heirId, Instant when) {
        return database.change(sql -> {
            if (!isThere(sql, playerId)) {
                return false;
            }
            forgetInvitations(sql, playerId);
            new SessionTable(sql).endAllBut(playerId, Optional.empty());
            DatabaseNotebookStore.lockOwned(sql, playerId);
            heirId.ifPresent(heir -> DatabaseNotebookStore.bequeath(sql, playerId, heir));
            sql.deleteFrom(NOTEBOOK_MEMBER)
                    .where(NOTEBOOK_MEMBER.PLAYER_ID.eq(playerId))
                    .execute();
            sql.update(PLAYER)
                    .set(PLAYER.CLOSED_AT, time(when))
                    .setNull(PLAYER.NAME_LOWER)
                    .setNull(PLAYER.PASSPHRASE_HASH)
                    .where(PLAYER.ID.eq(playerId))
                    .execute();
            return true;
        });
    }

    @Override
    public boolean begin(Session session, String tokenSha256, String hash) {
        return database.change(sql ->
                isStill(sql, session.player().id(), hash) && new SessionTable(sql).begin(session, tokenSha256) == 1);
    }

    @Override
    public Optional<Session> session(String tokenSha256, Instant now) {
        return database.ask(sql -> new SessionTable(sql).find(tokenSha256, now));
    }

    @Override
    public List<Session> sessions(UUID playerId, Instant now) {
        return database.look(sql -> new SessionTable(sql).of(playerId, now));
    }

    @Override
    public void open(UUID sessionId, UUID notebookId) {
        database.change(sql -> new SessionTable(sql).open(sessionId, notebookId));
    }

    @Override
    public void end(String tokenSha256) {
        database.change(sql -> new SessionTable(sql).end(tokenSha256));
    }

    @Override
    public boolean end(UUID playerId, UUID sessionId) {
        return database.change(sql -> new SessionTable(sql).end(playerId, sessionId)) == 1;
    }

    @Override
    public void endOthers(UUID playerId, UUID sparedSessionId) {
        database.change(sql -> new SessionTable(sql).endOthers(playerId, sparedSessionId));
    }
}
