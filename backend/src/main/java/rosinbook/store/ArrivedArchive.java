package rosinbook.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import rosinbook.limit.Limit;

/** An archive that has come whole, in a temporary file that is removed when this is closed. */
public final class ArrivedArchive implements AutoCloseable {
    private final Path file;

    private ArrivedArchive(Path file) {
        this.file = file;
    }

    /**
     * Waits for all of it.
     *
     * @throws IOException if it cannot be read from there
     * @throws rosinbook.limit.PastLimit if it is too large
     * @throws CannotWrite if there is no room for it
     */
    public static ArrivedArchive from(InputStream source) throws IOException {
        ArrivedArchive arrived = new ArrivedArchive(spool());
        try {
            copyLimited(source, arrived.file);
        } catch (IOException | RuntimeException | Error problem) {
            arrived.close();
            throw problem;
        }
        return arrived;
    }

    /** Asked for each time, so that a test can set it. */
    private static Path temporaryFolder() {
        return Path.of(System.getProperty("java.io.tmpdir")).toAbsolutePath();
    }

    private static Path spool() {
        try {
            return Files.createTempFile(temporaryFolder(), "rosinbook-import", ".zip");
        } catch (IOException problem) {
            throw notSpooled();
        }
    }

    private static CannotWrite notSpooled() {
        Path folder = temporaryFolder();
        return DataFolder.isFull(folder)
                ? new CannotWrite(
                        CannotWrite.Reason.DISK_FULL,
                        "The disk of the folder for temporary files, " + folder
                                + ", is full. Make room; then import again.")
                : new CannotWrite(
                        CannotWrite.Reason.READ_ONLY,
                        "The folder for temporary files, " + folder
                                + ", cannot be written. Make it writable; then import again.");
    }

    private static void copyLimited(InputStream source, Path spool) throws IOException {
        try (OutputStream target = Files.newOutputStream(spool)) {
            byte[] buffer = new byte[1 << 16];
            long total = 0;
            for (int count = source.read(buffer); count >= 0; count = source.read(buffer)) {
                total += count;
                Limit.ARCHIVE_BYTES.check(total);
                write(target, buffer, count);
            }
        }
    }

    /** What goes wrong here is ours; what goes wrong in reading is the sender's. */
    private static void write(OutputStream spool, byte[] bytes, int count) {
        try {
            spool.write(bytes, 0, count);
        } catch (IOException problem) {
            throw notSpooled();
        }
    }

    Path file() {
        return file;
    }

    @Override
    public void close() {
        file.toFile().delete();
    }
}
