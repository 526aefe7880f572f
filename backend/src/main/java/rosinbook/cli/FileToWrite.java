package rosinbook.cli;

import java.nio.file.Files;
import java.nio.file.Path;

/** Where a command is to write a file. */
final class FileToWrite {
    private FileToWrite() {}

    /** @throws IllegalArgumentException if no file can be made or replaced there */
    static Path checked(Path file) {
        Path whole = file.toAbsolutePath();
        if (Files.isDirectory(whole)) {
            throw new IllegalArgumentException(whole + " is a folder; name a file in it");
        }
        if (!Files.isDirectory(whole.getParent())) {
            throw new IllegalArgumentException("the folder " + whole.getParent() + " is not there; make it first");
        }
        return whole;
    }
}
