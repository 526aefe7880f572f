package rosinbook.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import rosinbook.store.Durable;

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

    /**
     * That each file to write is one of its own.
     *
     * @param inputs what is read; null where nothing is
     * @param targets what is to be written; null where nothing is
     * @throws IllegalArgumentException naming one that would overwrite another
     */
    static void checkApart(Stream<Path> inputs, Stream<Path> targets) {
        List<Path> taken = new ArrayList<>(inputs.filter(Objects::nonNull).toList());
        targets.filter(Objects::nonNull).forEach(target -> {
            if (taken.stream().anyMatch(other -> isSame(other, target))) {
                throw new IllegalArgumentException(target
                        + " would overwrite what is read or written beside it; give every file a name of its own");
            }
            taken.add(target);
        });
    }

    private static boolean isSame(Path one, Path other) {
        try {
            return Files.isSameFile(one, other);
        } catch (IOException notThere) {
            return one.toAbsolutePath()
                    .normalize()
                    .equals(other.toAbsolutePath().normalize());
        }
    }

    /** Writes a file that is whole or not there; an earlier one is replaced when all is written. */
    static void write(Path target, byte[] bytes) throws IOException {
        if (Files.exists(target) && !Files.isRegularFile(target)) { // such as a pipe, which nothing can replace
            Files.write(target, bytes);
            return;
        }
        Path whole = Files.exists(target) ? target.toRealPath() : target.toAbsolutePath();
        Path unfinished = whole.resolveSibling(whole.getFileName() + ".unfinished");
        try {
            Files.write(unfinished, bytes);
            Durable.finish(unfinished, whole);
        } finally {
            Files.deleteIfExists(unfinished);
        }
    }
}
