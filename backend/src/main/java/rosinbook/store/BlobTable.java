package rosinbook.store;

import static rosinbook.store.schema.Tables.BLOB;
import static rosinbook.store.schema.Tables.BLOB_PART;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.DSLContext;
import rosinbook.notebook.Blob;

/** One notebook's files, within one database transaction. */
final class BlobTable {
    /** Length of all parts but the last, in bytes. */
    static final int PART_BYTES = 512 << 10;

    private final DSLContext sql;
    private final UUID notebookId;

    BlobTable(DSLContext sql, UUID notebookId) {
        this.sql = sql;
        this.notebookId = notebookId;
    }

    boolean holds(Blob blob) {
        return sql.fetchExists(
                BLOB, BLOB.NOTEBOOK_ID.eq(notebookId), BLOB.SHA256.eq(blob.sha256()), BLOB.BYTE_COUNT.eq(blob.size()));
    }

    /** Every file, by its name. */
    List<Blob> all() {
        return sql.select(BLOB.SHA256, BLOB.BYTE_COUNT)
                .from(BLOB)
                .where(BLOB.NOTEBOOK_ID.eq(notebookId))
                .orderBy(BLOB.SHA256)
                .fetch(found -> new Blob(found.value1(), found.value2()));
    }

    /** The bytes as they stand, whether or not they still match their name. */
    Optional<byte[]> read(Blob blob) {
        if (!holds(blob)) {
            return Optional.empty();
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream((int) blob.size());
        sql.select(BLOB_PART.BYTES)
                .from(BLOB_PART)
                .where(parts(blob))
                .orderBy(BLOB_PART.PART_NUMBER)
                .forEach(part -> bytes.writeBytes(part.value1()));
        return Optional.of(bytes.toByteArray());
    }

    private Condition parts(Blob blob) {
        return BLOB_PART.NOTEBOOK_ID.eq(notebookId).and(BLOB_PART.SHA256.eq(blob.sha256()));
    }

    /** Two that keep the same file at once both succeed: the second finds it there. */
    void keep(Blob blob, byte[] bytes) {
        int added = sql.insertInto(BLOB)
                .set(BLOB.NOTEBOOK_ID, notebookId)
                .set(BLOB.SHA256, blob.sha256())
                .set(BLOB.BYTE_COUNT, blob.size())
                .onConflictDoNothing()
                .execute();
        for (int number = 0; added == 1 && number * PART_BYTES < bytes.length; number++) {
            int end = Math.min(bytes.length, (number + 1) * PART_BYTES);
            sql.insertInto(BLOB_PART)
                    .set(BLOB_PART.NOTEBOOK_ID, notebookId)
                    .set(BLOB_PART.SHA256, blob.sha256())
                    .set(BLOB_PART.PART_NUMBER, number)
                    .set(BLOB_PART.BYTES, Arrays.copyOfRange(bytes, number * PART_BYTES, end))
                    .execute();
        }
    }
}
