package rosinbook.store;

import static rosinbook.store.schema.Tables.REVISION;
import static rosinbook.store.schema.Tables.SHEET;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Enumeration;
import java.util.HashSet;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.jooq.Cursor;
import org.jooq.DSLContext;
import org.jooq.Record;
import rosinbook.notebook.Blob;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Revision;

/**
 * A whole notebook as one ZIP of readable JSON: {@code sheets/KIND/ID/r0001.json}, one file a revision, format 1; and the
 * files that sheets name, as they came: {@code blobs/SHA256}.
 *
 * <p>Shares are not part of it: a link belongs to the place that serves it.
 */
public final class Archive {
    /** Most entries that are read. */
    static final int MAX_ENTRIES = 500_000;

    /** Most bytes that are read, packed. */
    static final long MAX_PACKED_BYTES = 512L << 20;

    /** Most bytes that one entry may unpack to. */
    static final int MAX_ENTRY_BYTES = 4 * ContentJson.MAX_BYTES;

    private static final String COVER = "rosinbook.json";
    private static final String BLOBS = "blobs/";
    private static final Pattern BLOB = Pattern.compile(BLOBS + "[0-9a-f]{64}");

    private final Database database;
    private final UUID notebookId;

    public Archive(Database database, UUID notebookId) {
        this.database = database;
        this.notebookId = notebookId;
    }

    /**
     * What an import did.
     *
     * @param added revisions that were new
     * @param known revisions that were there already
     */
    public record Imported(int added, int known) {}

    /** Writes every file and every revision. The stream is finished but not closed. */
    public void export(OutputStream target) throws IOException {
        ZipOutputStream zip = new ZipOutputStream(target, StandardCharsets.UTF_8);
        put(zip, COVER, "{\"format\": 1, \"what\": \"a Rosinbook notebook\"}\n".getBytes(StandardCharsets.UTF_8));
        try {
            database.look(sql -> {
                BlobTable blobs = new BlobTable(sql, notebookId);
                for (Blob blob : blobs.all()) {
                    put(zip, BLOBS + blob.sha256(), blobs.read(blob).orElseThrow());
                }
                try (Cursor<Record> revisions = everyRevision(sql)) {
                    for (Record found : revisions) {
                        Revision revision = RevisionRow.read(found);
                        put(zip, ArchiveEntry.name(revision), ArchiveEntry.write(revision));
                    }
                }
                return null;
            });
        } catch (UncheckedIOException problem) {
            throw problem.getCause();
        }
        zip.finish();
    }

    private Cursor<Record> everyRevision(DSLContext sql) {
        return sql.select(RevisionRow.COLUMNS)
                .from(REVISION)
                .join(SHEET)
                .on(SHEET.ID.eq(REVISION.SHEET_ID))
                .where(REVISION.NOTEBOOK_ID.eq(notebookId))
                .orderBy(SHEET.KIND, SHEET.ID, REVISION.REVISION_NUMBER)
                .fetchSize(200)
                .fetchLazy();
    }

    private static void put(ZipOutputStream zip, String name, byte[] bytes) {
        try {
            zip.putNextEntry(new ZipEntry(name));
            zip.write(bytes);
            zip.closeEntry();
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }

    /**
     * Adds what the archive has and this notebook has not. Revisions that are here already are recognised.
     *
     * @throws ArchiveUnreadable if the archive is damaged or contradicts this notebook; then nothing was added
     */
    public Imported read(InputStream source) throws IOException {
        Path spool = Files.createTempFile("rosinbook-import", ".zip");
        try {
            copyLimited(source, spool);
            try (ZipFile zip = new ZipFile(spool.toFile(), StandardCharsets.UTF_8)) {
                List<String> names = names(zip);
                return database.change(sql -> {
                    ArchiveImport adding = new ArchiveImport(sql, notebookId);
                    names.stream()
                            .filter(Archive::isBlob)
                            .forEach(name -> adding.keep(name, bytes(zip, name, Blob.MOST_BYTES)));
                    return adding.add(
                            names.stream().filter(name -> !isBlob(name)).toList(),
                            name -> ArchiveEntry.read(name, bytes(zip, name, MAX_ENTRY_BYTES)));
                });
            } catch (ZipException problem) {
                throw new ArchiveUnreadable("this is not a ZIP that can be read; export it again");
            } catch (IllegalArgumentException problem) {
                throw new ArchiveUnreadable("this ZIP holds a name that is not UTF-8; it is none of ours");
            }
        } finally {
            Files.delete(spool);
        }
    }

    private static void copyLimited(InputStream source, Path spool) throws IOException {
        try (OutputStream target = Files.newOutputStream(spool)) {
            byte[] buffer = new byte[1 << 16];
            long total = 0;
            for (int count = source.read(buffer); count >= 0; count = source.read(buffer)) {
                total += count;
                if (total > MAX_PACKED_BYTES) {
                    throw new ArchiveUnreadable(
                            "this archive is larger than " + (MAX_PACKED_BYTES >> 20) + " MB; nothing was read");
                }
                target.write(buffer, 0, count);
            }
        }
    }

    private static List<String> names(ZipFile zip) {
        if (zip.size() > MAX_ENTRIES) {
            throw new ArchiveUnreadable("this archive has " + zip.size() + " entries; " + MAX_ENTRIES + " is the most");
        }
        if (zip.getEntry(COVER) == null) {
            throw new ArchiveUnreadable("this ZIP is not an archive of a Rosinbook: " + COVER + " is missing");
        }
        List<String> names = new ArrayList<>();
        for (Enumeration<? extends ZipEntry> entries = zip.entries(); entries.hasMoreElements(); ) {
            String name = entries.nextElement().getName();
            if (isBlob(name) || ArchiveEntry.NAME.matcher(name).matches()) {
                names.add(name);
            } else if (!name.equals(COVER)) {
                throw new ArchiveUnreadable("this archive holds a file that does not belong in one; nothing was read");
            }
        }
        names.sort(Comparator.naturalOrder());
        return names;
    }

    private static boolean isBlob(String name) {
        return BLOB.matcher(name).matches();
    }

    private static byte[] bytes(ZipFile zip, String name, int most) {
        try (InputStream entry = zip.getInputStream(zip.getEntry(name))) {
            byte[] bytes = entry.readNBytes(most + 1);
            if (bytes.length > most) {
                throw new ArchiveUnreadable(name + " is too large");
            }
            return bytes;
        } catch (IOException problem) {
            throw new ArchiveUnreadable(name + " is damaged and cannot be unpacked");
        }
    }

    /** Every revision and every file that no longer matches its checksum, or cannot be read; gaps; and files that are missing. */
    public Verified verify() {
        return database.look(sql -> {
            BlobTable blobs = new BlobTable(sql, notebookId);
            Verification verification = new Verification(new HashSet<>(blobs.all()));
            blobs.all()
                    .forEach(blob ->
                            verification.checkBlob(blob, blobs.read(blob).orElseThrow()));
            sql.select(
                            REVISION.SHEET_ID,
                            SHEET.KIND,
                            SHEET.HEAD_NUMBER,
                            REVISION.REVISION_NUMBER,
                            REVISION.CONTENT,
                            REVISION.CONTENT_SHA256)
                    .from(REVISION)
                    .join(SHEET)
                    .on(SHEET.ID.eq(REVISION.SHEET_ID))
                    .where(REVISION.NOTEBOOK_ID.eq(notebookId))
                    .orderBy(REVISION.SHEET_ID, REVISION.REVISION_NUMBER)
                    .fetchSize(200)
                    .fetchLazy()
                    .forEach(found -> verification.check(
                            found.value1(),
                            found.value2(),
                            found.value3(),
                            found.value4(),
                            found.value5(),
                            found.value6()));
            return verification.finish();
        });
    }

    /**
     * What a verification found.
     *
     * @param revisions how many were checked
     * @param damages what is wrong, one sentence each; empty if all is well
     */
    public record Verified(int revisions, List<String> damages) {
        public Verified {
            damages = List.copyOf(damages);
        }
    }
}
