package rosinbook.store;

import static rosinbook.store.DatabaseAccessStore.time;
import static rosinbook.store.schema.Tables.PLAYER;
import static rosinbook.store.schema.Tables.SIGN_IN_SESSION;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.ResultQuery;
import org.jooq.impl.DSL;
import rosinbook.access.Session;

/** Sessions, within one database transaction. */
final class SessionTable {
    private final DSLContext sql;

    SessionTable(DSLContext sql) {
        this.sql = sql;
    }

    int begin(Session session, String tokenSha256) {
        sql.deleteFrom(SIGN_IN_SESSION)
                .where(SIGN_IN_SESSION.ENDS_AT.le(time(session.beganAt())))
                .execute();
        return sql.insertInto(SIGN_IN_SESSION)
                .set(SIGN_IN_SESSION.ID, session.id())
                .set(SIGN_IN_SESSION.TOKEN_SHA256, tokenSha256)
                .set(SIGN_IN_SESSION.PLAYER_ID, session.player().id())
                .set(SIGN_IN_SESSION.NOTEBOOK_ID, session.notebookId().orElse(null))
                .set(SIGN_IN_SESSION.BEGAN_AT, time(session.beganAt()))
                .set(SIGN_IN_SESSION.ENDS_AT, time(session.endsAt()))
                .execute();
    }

    Optional<Session> find(String tokenSha256, Instant now) {
        return select(SIGN_IN_SESSION.TOKEN_SHA256.eq(tokenSha256), now).fetchOptional(SessionTable::read);
    }

    List<Session> of(UUID playerId, Instant now) {
        return select(SIGN_IN_SESSION.PLAYER_ID.eq(playerId), now).fetch(SessionTable::read);
    }

    private ResultQuery<Record> select(Condition condition, Instant now) {
        return sql.select(SIGN_IN_SESSION.fields())
                .select(PLAYER.fields())
                .from(SIGN_IN_SESSION)
                .join(PLAYER)
                .on(PLAYER.ID.eq(SIGN_IN_SESSION.PLAYER_ID))
                .where(condition)
                .and(SIGN_IN_SESSION.ENDS_AT.gt(time(now)))
                .and(PLAYER.CLOSED_AT.isNull())
                .orderBy(SIGN_IN_SESSION.BEGAN_AT.desc(), SIGN_IN_SESSION.ID);
    }

    private static Session read(Record found) {
        return new Session(
                found.get(SIGN_IN_SESSION.ID),
                DatabaseAccessStore.player(found),
                Optional.ofNullable(found.get(SIGN_IN_SESSION.NOTEBOOK_ID)),
                found.get(SIGN_IN_SESSION.BEGAN_AT).toInstant(),
                found.get(SIGN_IN_SESSION.ENDS_AT).toInstant());
    }

    int open(UUID sessionId, UUID notebookId) {
        return sql.update(SIGN_IN_SESSION)
                .set(SIGN_IN_SESSION.NOTEBOOK_ID, notebookId)
                .where(SIGN_IN_SESSION.ID.eq(sessionId))
                .execute();
    }

    int end(String tokenSha256) {
        return end(SIGN_IN_SESSION.TOKEN_SHA256.eq(tokenSha256));
    }

    int end(UUID playerId, UUID sessionId) {
        return end(SIGN_IN_SESSION.PLAYER_ID.eq(playerId).and(SIGN_IN_SESSION.ID.eq(sessionId)));
    }

    int endOthers(UUID playerId, UUID sparedId) {
        return end(SIGN_IN_SESSION.PLAYER_ID.eq(playerId).and(SIGN_IN_SESSION.ID.ne(sparedId)));
    }

    int endAllBut(UUID playerId, Optional<String> sparedTokenSha256) {
        Condition others =
                sparedTokenSha256.map(SIGN_IN_SESSION.TOKEN_SHA256::ne).orElse(DSL.noCondition());
        return end(SIGN_IN_SESSION.PLAYER_ID.eq(playerId).and(others));
    }

    private int end(Condition condition) {
        return sql.deleteFrom(SIGN_IN_SESSION).where(condition).execute();
    }
}
