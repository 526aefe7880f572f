package rosinbook.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The folder of an embedded notebook, claimed by one process until it is closed.
 *
 * <p>A new or changed schema is made in a file beside ({@code rosinbook.new.mv.db}) that takes the notebook's name when it
 * is whole, so being killed on the way leaves what was there. While the notebook is closed, {@code rosinbook.seal} holds
 * its file's SHA-256; a file that differs when it is opened again was damaged, even where the database would not notice.
 */
final class DataFolder implements AutoCloseable {
    /** Room that is left free, so that a change that was begun can be finished. */
    static final long RESERVE_BYTES = 32L << 20;

    private static final String SUFFIX = ".mv.db";
    private static final String FILE = "rosinbook" + SUFFIX;
    private static final String SEAL = "rosinbook.seal";
    private static final String LOCK = "rosinbook.lock";
    private static final String RUNNING = "rosinbook.running";

    private final Path folder;
    private final FileChannel claim;

    private DataFolder(Path folder, FileChannel claim) {
        this.folder = folder;
        this.claim = claim;
    }

    /**
     * Claims a folder, which is made if it is not there.
     *
     * @throws DatabaseUnavailable if it cannot be written, or another process has claimed it
     * @throws IllegalArgumentException if its name cannot stand in a database's address
     */
    static DataFolder claim(Path folder) {
        Path whole = folder.toAbsolutePath();
        if (whole.toString().contains(";")) {
            throw new IllegalArgumentException("the folder " + whole
                    + " cannot hold a notebook: its name has a semicolon; name another with --data");
        }
        FileChannel channel = null;
        try {
            Files.createDirectories(whole);
            channel = FileChannel.open(whole.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            if (channel.tryLock() == null) {
                throw new OverlappingFileLockException();
            }
            DataFolder claimed = new DataFolder(whole, channel);
            Files.deleteIfExists(claimed.unfinishedFile());
            return claimed;
        } catch (OverlappingFileLockException problem) {
            closeQuietly(channel);
            throw new DatabaseInUse(problem);
        } catch (IOException problem) {
            closeQuietly(channel);
            throw unusable(whole, problem);
        }
    }

    /** @throws IllegalArgumentException if something is in the folder, other than what a broken-off attempt left */
    static void checkIsEmpty(Path folder) {
        Set<String> ours = Set.of(LOCK, "rosinbook.new" + SUFFIX);
        try (Stream<Path> entries = Files.exists(folder) ? Files.list(folder) : Stream.empty()) {
            if (entries.anyMatch(entry -> !ours.contains(entry.getFileName().toString()))) {
                throw new IllegalArgumentException(
                        "the folder " + folder + " is not empty, and a backup is restored only into an empty one:"
                                + " rename that folder, nothing in it is lost, or name another with --data");
            }
        } catch (IOException problem) {
            throw unusable(folder.toAbsolutePath(), problem);
        }
    }

    void dropUnfinished() {
        unfinishedFile().toFile().delete();
    }

    private static DatabaseUnavailable unusable(Path folder, IOException problem) {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            return new DatabaseUnavailable(folder + " is not a folder", problem);
        }
        if (isFull(folder)) {
            return new DatabaseUnavailable(
                    "the disk of " + folder + " is full; free " + (RESERVE_BYTES >> 20) + " MB and start again",
                    problem);
        }
        boolean isRefused = problem instanceof FileSystemException;
        return new DatabaseUnavailable(
                "the folder " + folder + " cannot be written"
                        + (isRefused ? "; it may be read-only or belong to somebody else" : ""),
                problem);
    }

    /** Whether what is written into a folder, which need not be there yet, meets too little room. */
    static boolean isFull(Path folder) {
        Path there = folder;
        while (there != null && !Files.isDirectory(there)) {
            there = there.getParent();
        }
        return there != null && there.toFile().getUsableSpace() < RESERVE_BYTES;
    }

    Path file() {
        return folder.resolve(FILE);
    }

    /** Where a new file is made before it takes the notebook's name. */
    Path unfinishedFile() {
        return folder.resolve("rosinbook.new" + SUFFIX);
    }

    private Path sealFile() {
        return folder.resolve(SEAL);
    }

    /** The database's address of one of the two files. */
    static String url(Path file) {
        String path = file.toString();
        return "jdbc:h2:file:" + path.substring(0, path.length() - SUFFIX.length());
    }

    boolean holdsNotebook() {
        return holdsNotebook(folder);
    }

    /**
     * Whether a folder that need not be claimed, nor be there, holds one. A lost file leaves its seal, or, if its service was
     * killed, that one's note.
     */
    static boolean holdsNotebook(Path folder) {
        return Stream.of(FILE, SEAL, RUNNING).anyMatch(name -> Files.exists(folder.resolve(name)));
    }

    /** @throws CannotWrite if nothing can be added here now */
    void checkCanWrite() {
        if (!Files.isWritable(Files.exists(file()) ? file() : folder)) {
            throw new CannotWrite(
                    CannotWrite.Reason.READ_ONLY,
                    "The folder of this notebook can only be read. Make it writable; then save again.");
        }
        if (folder.toFile().getUsableSpace() < RESERVE_BYTES) {
            throw new CannotWrite(
                    CannotWrite.Reason.DISK_FULL,
                    "The disk of this notebook has less than " + (RESERVE_BYTES >> 20)
                            + " MB free. Make room; then save again.");
        }
    }

    /** @throws CannotWrite if a second file as large as the notebook's would not fit */
    void checkFitsTwice() {
        checkCanWrite();
        if (folder.toFile().getUsableSpace() < RESERVE_BYTES + file().toFile().length()) {
            throw new CannotWrite(
                    CannotWrite.Reason.DISK_FULL, "The disk of this notebook has no room for a copy of it. Make room.");
        }
    }

    /** @throws DatabaseDamaged if the file is not as it was left */
    void breakSeal() {
        try {
            if (Files.notExists(file())) {
                throw damaged("is missing", null);
            }
            if (Files.size(file()) == 0) {
                throw damaged("is empty", null);
            }
            if (Files.exists(sealFile())) {
                if (!Files.readString(sealFile()).strip().equals(seal())) {
                    throw damaged(
                            "is not as it was left: it was changed, cut short or replaced; if you put it there yourself,"
                                    + " delete " + sealFile() + " and start again",
                            null);
                }
                Files.delete(sealFile());
                Durable.forceFolder(folder); // or a power cut could bring it back, beside a newer file
            }
        } catch (IOException problem) {
            throw unusable(folder, problem);
        }
    }

    DatabaseDamaged damaged(String how, Throwable cause) {
        return new DatabaseDamaged("the notebook's file " + file() + " " + how, cause);
    }

    /** Says what the closed file is like; without room to say it, nothing is compared at the next start. */
    void putSeal() {
        Path unfinished = folder.resolve("rosinbook.seal.new");
        try {
            Files.writeString(unfinished, seal() + "\n");
            Durable.finish(unfinished, sealFile());
        } catch (IOException noRoom) {
            unfinished.toFile().delete();
        }
    }

    private String seal() throws IOException {
        MessageDigest digest = sha256();
        try (InputStream source = Files.newInputStream(file())) {
            byte[] buffer = new byte[1 << 16];
            for (int count = source.read(buffer); count >= 0; count = source.read(buffer)) {
                digest.update(buffer, 0, count);
            }
        }
        return "sha256 " + HexFormat.of().formatHex(digest.digest());
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java has SHA-256", impossible);
        }
    }

    /** A copy of the closed notebook, to be worked on. */
    void copyToUnfinished() {
        checkFitsTwice();
        try {
            Files.copy(file(), unfinishedFile());
        } catch (IOException problem) {
            throw unusable(folder, problem);
        }
    }

    /** The new file becomes the notebook; before, the seal of the one that it replaces goes. */
    void finish() {
        try {
            if (Files.deleteIfExists(sealFile())) {
                Durable.forceFolder(folder);
            }
            Durable.finish(unfinishedFile(), file());
        } catch (IOException problem) {
            throw unusable(folder, problem);
        }
    }

    @Override
    public void close() {
        closeQuietly(claim);
    }

    private static void closeQuietly(FileChannel channel) {
        try {
            if (channel != null) {
                channel.close();
            }
        } catch (IOException released) {
            // the process's end releases it, too
        }
    }
}
