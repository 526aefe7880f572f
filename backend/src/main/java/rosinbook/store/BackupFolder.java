package rosinbook.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The backups in a folder, told from other files by their name and by the cover inside that has to agree with it. Files
 * that are not ours are neither listed nor deleted.
 */
public final class BackupFolder {
    private static final DateTimeFormatter NAME = DateTimeFormatter.ofPattern(
                    "'rosinbook-'uuuu-MM-dd'-'HHmmss'-'SSS'Z.zip'")
            .withZone(ZoneOffset.UTC);
    private static final String UNFINISHED = ".unfinished";
    private static final Duration BROKEN_OFF = Duration.ofHours(1);
    private static final Pattern OURS =
            Pattern.compile("rosinbook-\\d{4}-\\d{2}-\\d{2}-\\d{6}-\\d{3}Z\\.zip(" + Pattern.quote(UNFINISHED) + ")?");

    private final Path folder;

    public BackupFolder(Path folder) {
        this.folder = folder;
    }

    /**
     * A backup that is there.
     *
     * @param bytes length of its file
     * @param isOfDamaged whether the notebook had damages when it was made
     * @param begun when the first notebook in it was begun, by which those of several databases are told apart; empty if
     *     that cannot be read
     */
    public record Kept(String name, Instant at, long bytes, boolean isOfDamaged, Optional<Instant> begun) {}

    /** Name of a backup made at that time, to the millisecond. */
    public static String name(Instant at) {
        return NAME.format(at);
    }

    /** Of whichever database, newest first. */
    public List<Kept> list() {
        try (Stream<Path> files = ours(false)) {
            return files.map(BackupFolder::kept)
                    .flatMap(Optional::stream)
                    .sorted(Comparator.comparing(Kept::at).reversed())
                    .toList();
        } catch (IOException unreadable) {
            return List.of();
        }
    }

    private Stream<Path> ours(boolean unfinished) throws IOException {
        if (!Files.isDirectory(folder)) {
            return Stream.empty();
        }
        return Files.list(folder).filter(file -> {
            String name = file.getFileName().toString();
            return OURS.matcher(name).matches() && name.endsWith(UNFINISHED) == unfinished && Files.isRegularFile(file);
        });
    }

    private static Optional<Kept> kept(Path file) {
        String name = file.getFileName().toString();
        try (BackupFile backup = BackupFile.open(file)) {
            Instant at = backup.cover().madeAt();
            boolean isOfDamaged = backup.cover().damages() > 0;
            return Optional.of(new Kept(name, at, Files.size(file), isOfDamaged, backup.begun()))
                    .filter(kept -> name(at).equals(name));
        } catch (IOException | BackupUnreadable notOurs) {
            return Optional.empty();
        }
    }

    /** Of each database the newest whose every part matches its checksum and whose notebook had no damages, newest first. */
    public List<Kept> newestWhole() {
        Map<Optional<Instant>, Kept> newest = new LinkedHashMap<>();
        for (Kept kept : list()) {
            if (!newest.containsKey(kept.begun()) && !kept.isOfDamaged() && isWhole(folder.resolve(kept.name()))) {
                newest.put(kept.begun(), kept);
            }
        }
        return List.copyOf(newest.values());
    }

    private static boolean isWhole(Path file) {
        try (BackupFile backup = BackupFile.open(file)) {
            backup.check();
            return true;
        } catch (IOException | BackupUnreadable damaged) {
            return false;
        }
    }

    /**
     * Writes one, reads it again to be sure, and only then gives it its name.
     *
     * @param usualBytes how large it will be, as far as is known
     * @throws CannotWrite if there is no room for it, or only reading is allowed; then nothing is left of it
     * @throws BackupUnreadable if it did not arrive as it was written
     */
    Kept add(Instant now, BackupWriter writer, long usualBytes) {
        String name = name(now);
        Path whole = folder.resolve(name);
        Path unfinished = folder.resolve(name + UNFINISHED);
        try {
            Files.createDirectories(folder);
            dropUnfinished(now.minus(BROKEN_OFF));
            checkLeaves(DataFolder.RESERVE_BYTES + usualBytes);
            writer.writeChecked(unfinished, now);
            checkLeaves(DataFolder.RESERVE_BYTES);
            Durable.finish(unfinished, whole);
            return kept(whole).orElseThrow(() -> new IOException(name + " vanished"));
        } catch (IOException problem) {
            throw refused(problem);
        } finally {
            unfinished.toFile().delete();
        }
    }

    /** The notebook may live on the same disk, and must be able to go on. */
    private void checkLeaves(long bytes) {
        if (folder.toFile().getUsableSpace() < bytes) {
            throw full();
        }
    }

    private static CannotWrite full() {
        return new CannotWrite(
                CannotWrite.Reason.DISK_FULL, "The disk of the backups is full. Make room; then back up again.");
    }

    /** Why a backup could not be added or deleted; to be asked before what was written is given up, which makes room. */
    private RuntimeException refused(IOException problem) {
        if (DataFolder.isFull(folder.toAbsolutePath())) {
            return full();
        }
        if (problem instanceof FileSystemException) {
            return new CannotWrite(
                    CannotWrite.Reason.READ_ONLY,
                    "The folder of the backups cannot be written. Make it writable; then back up again.");
        }
        return new UncheckedIOException(problem);
    }

    /** A younger one may be what another process is writing; one that is gone by now counts as old. */
    private void dropUnfinished(Instant before) throws IOException {
        try (Stream<Path> files = ours(true)) {
            for (Path file : files.toList()) {
                if (Instant.ofEpochMilli(file.toFile().lastModified()).isBefore(before)) {
                    Files.deleteIfExists(file);
                }
            }
        }
    }

    /** Deletes what need not be kept of one database's backups. Those of when it had damages push out no others. */
    void tidy(List<Kept> all) {
        Map<Boolean, List<Kept>> byState = all.stream().collect(Collectors.partitioningBy(Kept::isOfDamaged));
        try {
            for (List<Kept> alike : byState.values()) {
                drop(alike, KeepingRule.dropped(alike.stream().map(Kept::at).toList()));
            }
        } catch (IOException problem) {
            throw refused(problem);
        }
    }

    private void drop(List<Kept> among, Set<Instant> dropped) throws IOException {
        for (Kept kept : among) {
            if (dropped.contains(kept.at())) {
                Files.deleteIfExists(folder.resolve(kept.name()));
            }
        }
    }
}
