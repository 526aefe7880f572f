package rosinbook.store;

import static rosinbook.store.schema.Tables.SHARE;
import static rosinbook.store.schema.Tables.SHARE_REVISION;
import static rosinbook.store.schema.Tables.SHEET;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Result;
import rosinbook.notebook.Reference;
import rosinbook.share.Share;
import rosinbook.share.ShareStore;

/** One notebook's shares in a database. */
public final class DatabaseShareStore implements ShareStore {
    private final Database database;
    private final UUID notebookId;

    public DatabaseShareStore(Database database, UUID notebookId) {
        this.database = database;
        this.notebookId = notebookId;
    }

    @Override
    public void add(Share share, String tokenSha256, Set<Reference> shown) {
        database.change(sql -> {
            sql.insertInto(SHARE)
                    .set(SHARE.ID, share.id())
                    .set(SHARE.NOTEBOOK_ID, notebookId)
                    .set(SHARE.TOKEN_SHA256, tokenSha256)
                    .set(SHARE.NAME, share.name())
                    .set(SHARE.SHEET_ID, share.sheetId())
                    .set(SHARE.REVISION_NUMBER, share.revision().orElse(null))
                    .set(SHARE.CREATED_AT, time(share.createdAt()))
                    .set(
                            SHARE.EXPIRES_AT,
                            share.expiresAt().map(DatabaseShareStore::time).orElse(null))
                    .set(SHARE.OPENED_COUNT, 0)
                    .execute();
            for (Reference reference : shown) {
                sql.insertInto(SHARE_REVISION)
                        .set(SHARE_REVISION.SHARE_ID, share.id())
                        .set(SHARE_REVISION.NOTEBOOK_ID, notebookId)
                        .set(SHARE_REVISION.SHEET_ID, reference.id())
                        .set(SHARE_REVISION.REVISION_NUMBER, reference.revision())
                        .execute();
            }
            return null;
        });
    }

    private static OffsetDateTime time(Instant instant) {
        return OffsetDateTime.ofInstant(instant, ZoneOffset.UTC);
    }

    @Override
    public List<Share> list() {
        if (!database.isWriting()) {
            database.openings().writeIfPossible();
        }
        return database.ask(sql -> find(sql, SHARE.NOTEBOOK_ID.eq(notebookId)).map(DatabaseShareStore::read));
    }

    /** A share and the notebook it belongs to. */
    public record Found(UUID notebookId, Share share) {}

    /** The share with this token, whichever notebook it belongs to; empty if there is none. */
    public static Optional<Found> byToken(Database database, String tokenSha256) {
        return database.ask(sql -> find(sql, SHARE.TOKEN_SHA256.eq(tokenSha256)).stream()
                .findFirst()
                .map(found -> new Found(found.get(SHARE.NOTEBOOK_ID), read(found))));
    }

    private static Result<Record> find(DSLContext sql, Condition condition) {
        return sql.select(SHARE.asterisk(), SHEET.KIND)
                .from(SHARE)
                .join(SHEET)
                .on(SHEET.NOTEBOOK_ID.eq(SHARE.NOTEBOOK_ID).and(SHEET.ID.eq(SHARE.SHEET_ID)))
                .where(condition)
                .orderBy(SHARE.CREATED_AT.desc(), SHARE.ID)
                .fetch();
    }

    private static Share read(Record found) {
        return new Share(
                found.get(SHARE.ID),
                found.get(SHARE.NAME),
                DatabasePages.kind(found.get(SHEET.KIND)),
                found.get(SHARE.SHEET_ID),
                Optional.ofNullable(found.get(SHARE.REVISION_NUMBER)),
                found.get(SHARE.CREATED_AT).toInstant(),
                Optional.ofNullable(found.get(SHARE.EXPIRES_AT)).map(OffsetDateTime::toInstant),
                Optional.ofNullable(found.get(SHARE.REVOKED_AT)).map(OffsetDateTime::toInstant),
                Optional.ofNullable(found.get(SHARE.LAST_OPENED_AT)).map(OffsetDateTime::toInstant),
                found.get(SHARE.OPENED_COUNT));
    }

    @Override
    public Set<Reference> shown(UUID shareId) {
        return database.ask(sql -> new HashSet<>(sql.select(SHARE_REVISION.SHEET_ID, SHARE_REVISION.REVISION_NUMBER)
                .from(SHARE_REVISION)
                .where(SHARE_REVISION.SHARE_ID.eq(shareId))
                .and(SHARE_REVISION.NOTEBOOK_ID.eq(notebookId))
                .fetch(found -> new Reference(found.value1(), found.value2()))));
    }

    @Override
    public void opened(UUID shareId, Instant when) {
        database.openings().add(notebookId, shareId, when);
    }

    static void write(Database database, SortedMap<Openings.Key, Openings.Opened> openings) {
        database.change(sql -> {
            openings.forEach((share, opened) -> sql.update(SHARE)
                    .set(SHARE.LAST_OPENED_AT, time(opened.last()))
                    .set(SHARE.OPENED_COUNT, SHARE.OPENED_COUNT.plus(opened.times()))
                    .where(SHARE.ID.eq(share.shareId()))
                    .and(SHARE.NOTEBOOK_ID.eq(share.notebookId()))
                    .execute());
            return null;
        });
    }

    @Override
    public boolean revoke(UUID shareId, Instant when) {
        return database.change(sql -> {
            boolean known = sql.fetchExists(SHARE, SHARE.ID.eq(shareId).and(SHARE.NOTEBOOK_ID.eq(notebookId)));
            sql.update(SHARE)
                    .set(SHARE.REVOKED_AT, time(when))
                    .where(SHARE.ID.eq(shareId))
                    .and(SHARE.NOTEBOOK_ID.eq(notebookId))
                    .and(SHARE.REVOKED_AT.isNull())
                    .execute();
            return known;
        });
    }
}
