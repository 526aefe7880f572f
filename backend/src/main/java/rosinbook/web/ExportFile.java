package rosinbook.web;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import rosinbook.store.Archive;

/**
 * A whole archive before any of it is sent, in a temporary file that only this user can read. Where the system can, the file
 * loses its name when it is opened, so that nothing of it is left even if the program is killed.
 */
final class ExportFile implements Closeable {
    private final FileChannel file;

    private ExportFile(FileChannel file) {
        this.file = file;
    }

    /**
     * Writes it.
     *
     * @param folder for temporary files
     * @throws Problem if there is no room
     */
    static ExportFile of(Archive archive, Path folder) {
        try {
            ExportFile written = new ExportFile(FileChannel.open(
                    Files.createTempFile(folder, "rosinbook-export", ".zip"),
                    StandardOpenOption.READ,
                    StandardOpenOption.WRITE,
                    StandardOpenOption.DELETE_ON_CLOSE));
            try {
                written.write(archive);
            } catch (IOException | RuntimeException | Error problem) {
                written.close();
                throw problem;
            }
            return written;
        } catch (IOException full) {
            throw new Problem(
                    507,
                    "no-room",
                    "There is no room for this archive",
                    "The disk for temporary files is full; make room on it, or write the archive elsewhere with:"
                            + " rosinbook export.");
        }
    }

    private void write(Archive archive) throws IOException {
        OutputStream target = new BufferedOutputStream(Channels.newOutputStream(file), 1 << 16);
        archive.export(target);
        target.flush();
        file.position(0);
    }

    long bytes() throws IOException {
        return file.size();
    }

    void sendTo(OutputStream target) throws IOException {
        Channels.newInputStream(file).transferTo(target);
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
