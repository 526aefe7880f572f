package rosinbook.store;

import static rosinbook.store.schema.Tables.NOTEBOOK;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/** A backup on disk. Close it after use. */
public final class BackupFile implements AutoCloseable {
    private static final int MOST_COVER_BYTES = 1 << 20;
    private static final ObjectMapper JSON = new ObjectMapper();

    private final ZipFile zip;
    private final BackupCover cover;

    private BackupFile(ZipFile zip, BackupCover cover) {
        this.zip = zip;
        this.cover = cover;
    }

    /** @throws BackupUnreadable if it is no backup, or a newer Rosinbook made it */
    public static BackupFile open(Path file) throws IOException {
        if (!Files.isReadable(file) || Files.isDirectory(file)) {
            throw new BackupUnreadable(file + " cannot be read; check its name");
        }
        ZipFile zip;
        try {
            zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8);
        } catch (IOException | IllegalArgumentException problem) {
            throw new BackupUnreadable(file + " is no backup, or it is damaged: it is not a ZIP that can be read");
        }
        try {
            return new BackupFile(zip, cover(zip, file));
        } catch (IOException | RuntimeException problem) {
            zip.close();
            throw problem;
        }
    }

    private static BackupCover cover(ZipFile zip, Path file) throws IOException {
        ZipEntry entry = zip.getEntry(BackupCover.ENTRY);
        if (entry == null) {
            boolean isArchive = zip.getEntry("rosinbook.json") != null;
            throw new BackupUnreadable(
                    isArchive
                            ? file + " was written by export; read it with: rosinbook import"
                            : file + " is no backup of a Rosinbook");
        }
        try (InputStream source = zip.getInputStream(entry)) {
            return BackupCover.read(source.readNBytes(MOST_COVER_BYTES));
        } catch (EOFException | ZipException problem) {
            throw new BackupUnreadable(file + " is damaged: its cover cannot be read");
        }
    }

    public BackupCover cover() {
        return cover;
    }

    /**
     * When the first notebook in it was begun: what tells the backups of two databases apart. It stays the same where a
     * backup is restored. Empty if there is no such row, or it cannot be read.
     */
    Optional<Instant> begun() {
        String table = StoredTables.name(NOTEBOOK);
        for (BackupCover.Part part : cover.parts()) {
            if (part.table().equals(table) && zip.getEntry(part.entry()) != null) {
                return begun(part);
            }
        }
        return Optional.empty();
    }

    private Optional<Instant> begun(BackupCover.Part part) {
        String first = DatabaseSheetStore.ONLY_NOTEBOOK.toString();
        try (MappingIterator<JsonNode> rows = JSON.readerFor(JsonNode.class).readValues(part(part))) {
            while (rows.hasNextValue()) {
                JsonNode row = rows.nextValue();
                if (row.path("id").asText().equals(first)) {
                    return Optional.of(Instant.parse(row.path("created_at").asText()));
                }
            }
        } catch (IOException | DateTimeParseException damaged) {
            // as if it were nobody's
        }
        return Optional.empty();
    }

    /**
     * Reads all of it and compares it with its checksums.
     *
     * @throws BackupUnreadable naming the first part that is damaged
     */
    public BackupFile check() {
        Set<String> expected =
                cover.parts().stream().map(BackupCover.Part::entry).collect(Collectors.toSet());
        expected.add(BackupCover.ENTRY);
        if (!zip.stream().map(ZipEntry::getName).collect(Collectors.toSet()).equals(expected)) {
            throw new BackupUnreadable(zip.getName() + " is damaged: parts are missing, or do not belong in it");
        }
        for (BackupCover.Part part : cover.parts()) {
            if (!sha256(part).equals(part.sha256())) {
                throw new BackupUnreadable(
                        zip.getName() + " is damaged: " + part.entry() + " is not as it was written");
            }
        }
        return this;
    }

    private String sha256(BackupCover.Part part) {
        try (DigestInputStream source = new DigestInputStream(part(part), DataFolder.sha256())) {
            source.transferTo(java.io.OutputStream.nullOutputStream());
            return HexFormat.of().formatHex(source.getMessageDigest().digest());
        } catch (IOException damaged) {
            return "unreadable";
        }
    }

    InputStream part(BackupCover.Part part) throws IOException {
        return zip.getInputStream(zip.getEntry(part.entry()));
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }
}
