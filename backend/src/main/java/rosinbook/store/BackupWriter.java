package rosinbook.store;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.jooq.DSLContext;
import org.jooq.Table;

/**
 * Writes everything a database holds, from one moment, into one ZIP that can be restored into either kind of database:
 * {@code tables/NAME.jsonl} for every table, and a cover with their checksums.
 */
public final class BackupWriter {
    private final Database database;

    public BackupWriter(Database database) {
        this.database = database;
    }

    /**
     * Writes a backup. The stream is finished but not closed.
     *
     * @return its cover
     */
    public BackupCover write(OutputStream target, Instant now) throws IOException {
        ZipOutputStream zip = new ZipOutputStream(target, StandardCharsets.UTF_8);
        try {
            int damages = damages(database).size();
            List<BackupCover.Part> parts = database.look(sql -> tables(sql, zip));
            BackupCover cover =
                    new BackupCover(database.schemaVersion(), now.truncatedTo(ChronoUnit.MILLIS), damages, parts);
            zip.putNextEntry(new ZipEntry(BackupCover.ENTRY));
            zip.write(cover.write());
            zip.closeEntry();
            zip.finish();
            return cover;
        } catch (UncheckedIOException problem) {
            throw problem.getCause();
        }
    }

    /**
     * Writes a backup into a file that only its user can read, and reads it again.
     *
     * @throws BackupUnreadable if it did not arrive as it was written
     */
    public BackupCover writeChecked(Path file, Instant now) throws IOException {
        Durable.createOwn(file);
        BackupCover cover;
        try (OutputStream target = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
            cover = write(target, now);
        }
        try (BackupFile written = BackupFile.open(file)) {
            written.check();
        }
        return cover;
    }

    /** What is wrong in any of the notebooks, one sentence each. */
    static List<String> damages(Database database) {
        return Archive.verifyEach(database).damages();
    }

    private static List<BackupCover.Part> tables(DSLContext sql, ZipOutputStream zip) {
        List<BackupCover.Part> parts = new ArrayList<>();
        for (Table<?> table : StoredTables.inOrder(sql)) {
            parts.add(part(sql, table, zip));
        }
        return parts;
    }

    private static BackupCover.Part part(DSLContext sql, Table<?> table, ZipOutputStream zip) {
        String name = StoredTables.name(table);
        try {
            zip.putNextEntry(new ZipEntry("tables/" + name + ".jsonl"));
            DigestOutputStream lines = new DigestOutputStream(zip, DataFolder.sha256());
            long rows = new TableRows(sql, table).write(lines);
            zip.closeEntry();
            return new BackupCover.Part(
                    name,
                    rows,
                    HexFormat.of().formatHex(lines.getMessageDigest().digest()));
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }
}
