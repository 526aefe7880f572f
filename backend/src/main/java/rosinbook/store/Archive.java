package rosinbook.store;

import static rosinbook.store.schema.Tables.NOTEBOOK;
import static rosinbook.store.schema.Tables.REVISION;
import static rosinbook.store.schema.Tables.SHEET;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rosinbook.limit.Limit;
import rosinbook.notebook.Blob;
import rosinbook.notebook.Revision;

/**
 * A whole notebook as one ZIP of readable JSON: {@code sheets/KIND/ID/r0001.json}, one file a revision, format 1; and the
 * files that sheets name, as they came: {@code blobs/SHA256}.
 *
 * <p>Shares are not part of it: a link belongs to the place that serves it.
 */
public final class Archive {
    /** Most bytes that one entry may unpack to. */
    static final int MAX_ENTRY_BYTES = Limit.ARCHIVE_ENTRY_BYTES.count();

    private static final Logger LOG = LoggerFactory.getLogger(Archive.class);
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
                new EveryRevision(sql, notebookId).forEach((sheetId, kind, headNumber, found) -> {
                    Revision revision = RevisionRow.read(sheetId, kind, found);
                    put(zip, ArchiveEntry.name(revision), ArchiveEntry.write(revision));
                });
                return null;
            });
        } catch (UncheckedIOException problem) {
            throw problem.getCause();
        }
        zip.finish();
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
     * @throws rosinbook.limit.PastLimit if there is too much of something; then nothing was added
     * @throws CannotWrite if there is no room for it on its way, or in the end; then nothing was added
     */
    public Imported read(InputStream source) throws IOException {
        try (ArrivedArchive arrived = ArrivedArchive.from(source)) {
            return read(arrived, () -> {});
        }
    }

    /**
     * As {@link #read(InputStream)}.
     *
     * @param beforeEach told before each file; what it throws ends the import, and nothing was added
     */
    public Imported read(ArrivedArchive arrived, Runnable beforeEach) throws IOException {
        List<String> names = names(arrived.file());
        try (ZipFile zip = new ZipFile(arrived.file().toFile(), StandardCharsets.UTF_8)) {
            return database.change(sql -> {
                ArchiveImport adding = new ArchiveImport(sql, notebookId);
                names.stream().filter(Archive::isBlob).forEach(name -> {
                    beforeEach.run();
                    adding.keep(name, bytes(zip, name));
                });
                return adding.add(names.stream().filter(ArchiveEntry::isName).toList(), name -> {
                    beforeEach.run();
                    return ArchiveEntry.read(name, bytes(zip, name));
                });
            });
        } catch (ZipException problem) {
            throw new ArchiveUnreadable("this is not a ZIP that can be read; export it again");
        }
    }

    private static List<String> names(Path spool) throws IOException {
        List<String> names = ArchiveDirectory.names(spool);
        if (!names.contains(COVER)) {
            throw new ArchiveUnreadable("this ZIP is not an archive of a Rosinbook: " + COVER + " is missing");
        }
        return names.stream().sorted(ArchiveEntry.ORDER).toList();
    }

    /** Whether a file of this name may stand in an archive. */
    static boolean isOurs(String name) {
        return name.equals(COVER) || isBlob(name) || ArchiveEntry.isName(name);
    }

    /** How large a file of this name may be. */
    static int mostBytes(String name) {
        return isBlob(name) ? Blob.MOST_BYTES : MAX_ENTRY_BYTES;
    }

    private static boolean isBlob(String name) {
        return BLOB.matcher(name).matches();
    }

    /** @throws ArchiveUnreadable if it cannot be unpacked to what the archive says */
    static byte[] bytes(ZipFile zip, String name) {
        ZipEntry said = zip.getEntry(name);
        if (said == null) {
            throw new ArchiveUnreadable(name + " cannot be found where the archive says it is");
        }
        try (InputStream entry = zip.getInputStream(said)) {
            byte[] bytes = entry.readNBytes(mostBytes(name) + 1);
            if (bytes.length != said.getSize()) {
                throw new ArchiveUnreadable(name + " is damaged: it has not the length the archive says");
            }
            return bytes;
        } catch (IOException | RuntimeException problem) {
            throw problem instanceof ArchiveUnreadable told
                    ? told
                    : new ArchiveUnreadable(name + " is damaged and cannot be unpacked");
        }
    }

    /**
     * Every revision and every file that no longer matches its checksum, or cannot be read; gaps; files that are missing;
     * sheets of which nothing is left; and styles, links and strings that do not agree with the content they were taken from.
     */
    public Verified verify() {
        return readable(this::verifyAll);
    }

    /** The same of every notebook that a database holds. */
    public static Verified verifyEach(Database database) {
        return readable(() -> {
            int revisions = 0;
            List<String> damages = new ArrayList<>();
            for (UUID id :
                    database.look(sql -> sql.select(NOTEBOOK.ID).from(NOTEBOOK).fetch(NOTEBOOK.ID))) {
                Verified verified = new Archive(database, id).verify();
                revisions += verified.revisions();
                damages.addAll(verified.damages());
            }
            return new Verified(revisions, damages);
        });
    }

    private static Verified readable(Supplier<Verified> checking) {
        try {
            return checking.get();
        } catch (DatabaseUnavailable | DatabaseDamaged | DatabaseBusy | CannotWrite told) {
            throw told;
        } catch (RuntimeException unreadable) { // such as an empty value where the tables allow none
            LOG.warn("A notebook cannot be read to its end", unreadable);
            return new Verified(0, List.of("something in it cannot be read, so the rest was not checked"));
        }
    }

    private Verified verifyAll() {
        return database.look(sql -> {
            BlobTable blobs = new BlobTable(sql, notebookId);
            Verification verification = new Verification(new HashSet<>(blobs.all()), new BesideRows(sql, notebookId));
            blobs.all()
                    .forEach(blob ->
                            verification.checkBlob(blob, blobs.read(blob).orElse(new byte[0])));
            new EveryRevision(sql, notebookId)
                    .forEach((sheetId, kind, headNumber, found) -> verification.check(
                            sheetId,
                            kind,
                            headNumber,
                            found.get(REVISION.REVISION_NUMBER),
                            found.get(REVISION.CONTENT),
                            found.get(REVISION.CONTENT_SHA256)));
            sql.select(SHEET.KIND, SHEET.ID)
                    .from(SHEET)
                    .where(SHEET.NOTEBOOK_ID.eq(notebookId))
                    .andNotExists(sql.selectOne().from(REVISION).where(RevisionRow.OF_SHEET))
                    .orderBy(SHEET.ID)
                    .forEach(lost -> verification.lost(lost.value1(), lost.value2()));
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
