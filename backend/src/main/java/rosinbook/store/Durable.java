package rosinbook.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** Files that are whole or not there, also after a power cut; and files that only their user may read. */
public final class Durable {
    private Durable() {}

    /** What makes a new file readable by its user alone; nothing where the file system has no such modes. */
    private static FileAttribute<?>[] ownOnly() {
        boolean hasModes =
                FileSystems.getDefault().supportedFileAttributeViews().contains("posix");
        return hasModes
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
    }

    /** A fresh empty file that only its user may read; one of that name is dropped before. */
    public static void createOwn(Path file) throws IOException {
        Files.deleteIfExists(file);
        Files.createFile(file, ownOnly());
    }

    /** Writes a whole text into a file that only its user may read, replacing another of that name. */
    public static void writeOwn(Path file, String text) throws IOException {
        Path unfinished = file.resolveSibling(file.getFileName() + ".new");
        createOwn(unfinished);
        Files.writeString(unfinished, text);
        finish(unfinished, file);
    }

    /** Forces a file to the disk and then gives it its name, replacing another of that name. */
    public static void finish(Path unfinished, Path whole) throws IOException {
        try (FileChannel file = FileChannel.open(unfinished, StandardOpenOption.WRITE)) {
            file.force(true);
        }
        Files.move(unfinished, whole, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        forceFolder(whole.toAbsolutePath().getParent());
    }

    /** Forces to the disk which files a folder has. */
    static void forceFolder(Path folder) throws IOException {
        if (!FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
            return;
        }
        try (FileChannel entries = FileChannel.open(folder, StandardOpenOption.READ)) {
            entries.force(true);
        }
    }
}
