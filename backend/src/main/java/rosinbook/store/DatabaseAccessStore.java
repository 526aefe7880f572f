package rosinbook.store;

import static rosinbook.store.schema.Tables.NOTEBOOK_OWNER;
import static rosinbook.store.schema.Tables.SIGN_IN_SESSION;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import rosinbook.access.AccessStore;

/** One notebook's passphrase and sessions in a database. */
public final class DatabaseAccessStore implements AccessStore {
    private final Database database;
    private final UUID notebookId;

    public DatabaseAccessStore(Database database, UUID notebookId) {
        this.database = database;
        this.notebookId = notebookId;
    }

    private static OffsetDateTime time(Instant instant) {
        return OffsetDateTime.ofInstant(instant, ZoneOffset.UTC);
    }

    @Override
    public Optional<String> passphraseHash() {
        return database.look(sql -> sql.select(NOTEBOOK_OWNER.PASSPHRASE_HASH)
                .from(NOTEBOOK_OWNER)
                .where(NOTEBOOK_OWNER.NOTEBOOK_ID.eq(notebookId))
                .fetchOptional(NOTEBOOK_OWNER.PASSPHRASE_HASH));
    }

    @Override
    public void setPassphraseHash(String hash, Instant when) {
        database.change(sql -> {
            sql.deleteFrom(NOTEBOOK_OWNER)
                    .where(NOTEBOOK_OWNER.NOTEBOOK_ID.eq(notebookId))
                    .execute();
            sql.insertInto(NOTEBOOK_OWNER)
                    .set(NOTEBOOK_OWNER.NOTEBOOK_ID, notebookId)
                    .set(NOTEBOOK_OWNER.PASSPHRASE_HASH, hash)
                    .set(NOTEBOOK_OWNER.CHANGED_AT, time(when))
                    .execute();
            return sql.deleteFrom(SIGN_IN_SESSION)
                    .where(SIGN_IN_SESSION.NOTEBOOK_ID.eq(notebookId))
                    .execute();
        });
    }

    @Override
    public void begin(String tokenSha256, Instant beganAt, Instant endsAt) {
        database.change(sql -> {
            sql.deleteFrom(SIGN_IN_SESSION)
                    .where(SIGN_IN_SESSION.ENDS_AT.le(time(beganAt)))
                    .execute();
            return sql.insertInto(SIGN_IN_SESSION)
                    .set(SIGN_IN_SESSION.TOKEN_SHA256, tokenSha256)
                    .set(SIGN_IN_SESSION.NOTEBOOK_ID, notebookId)
                    .set(SIGN_IN_SESSION.BEGAN_AT, time(beganAt))
                    .set(SIGN_IN_SESSION.ENDS_AT, time(endsAt))
                    .execute();
        });
    }

    @Override
    public boolean isOpen(String tokenSha256, Instant now) {
        return database.look(sql -> sql.fetchExists(
                SIGN_IN_SESSION,
                SIGN_IN_SESSION
                        .TOKEN_SHA256
                        .eq(tokenSha256)
                        .and(SIGN_IN_SESSION.NOTEBOOK_ID.eq(notebookId))
                        .and(SIGN_IN_SESSION.ENDS_AT.gt(time(now)))));
    }

    @Override
    public void end(String tokenSha256) {
        database.change(sql -> sql.deleteFrom(SIGN_IN_SESSION)
                .where(SIGN_IN_SESSION.TOKEN_SHA256.eq(tokenSha256))
                .and(SIGN_IN_SESSION.NOTEBOOK_ID.eq(notebookId))
                .execute());
    }
}
