package rosinbook.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/**
 * Where one running service keeps recordings: a temporary folder with a file that it holds locked, so that others can tell
 * it from what a killed one has left. Safe for all threads.
 */
final class UploadFolder implements AutoCloseable {
    private static final String PREFIX = "rosinbook-levels";
    private static final String LOCK = "lock";

    /** Of this process: to look at their locks would let them go (java.nio.channels.FileLock, "Platform dependencies"). */
    private static final Set<Path> OF_THIS_PROCESS = ConcurrentHashMap.newKeySet();

    private final Path temporary;
    private Path own;
    private FileChannel lock;

    /** @param temporary where it, and those of others, are made */
    UploadFolder(Path temporary) {
        this.temporary = temporary;
    }

    /** A folder for one recording. */
    synchronized Path forOne() throws IOException {
        if (own == null) {
            Path made = Files.createTempDirectory(temporary, PREFIX);
            OF_THIS_PROCESS.add(made);
            lock = FileChannel.open(made.resolve(LOCK), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            lock.lock();
            own = made;
        }
        return Files.createTempDirectory(own, "");
    }

    /** Removes what no running process owns; a newer one may be about to be locked, and is left for another time. */
    void clearLeft(Instant before) {
        try (Stream<Path> found = Files.list(temporary)) {
            List<Path> folders = found.filter(
                            each -> each.getFileName().toString().startsWith(PREFIX))
                    .toList();
            for (Path folder : folders) {
                if (isLeft(folder, before)) {
                    remove(folder);
                }
            }
        } catch (IOException unreadable) {
            // There is nothing that could be done about it.
        }
    }

    private boolean isLeft(Path folder, Instant before) {
        if (OF_THIS_PROCESS.contains(folder) || !Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        try {
            boolean isOld = Files.getLastModifiedTime(folder).toInstant().isBefore(before);
            return isOld && Files.isWritable(folder) && !isLocked(folder.resolve(LOCK));
        } catch (IOException gone) {
            return false;
        }
    }

    private static boolean isLocked(Path file) throws IOException {
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE);
                FileLock held = channel.tryLock()) {
            return held == null;
        }
    }

    /** Removes a folder with all that is in it, as far as that can be done. */
    static void remove(Path folder) {
        try (Stream<Path> left = Files.walk(folder)) {
            left.sorted(Comparator.reverseOrder()).forEach(path -> path.toFile().delete());
        } catch (IOException | UncheckedIOException gone) {
            folder.toFile().deleteOnExit();
        }
    }

    @Override
    public synchronized void close() throws IOException {
        if (own != null) {
            lock.close();
            remove(own);
            OF_THIS_PROCESS.remove(own);
            own = null;
        }
    }
}
