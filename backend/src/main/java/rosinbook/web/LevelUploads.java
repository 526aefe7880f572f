package rosinbook.web;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/**
 * Recordings on their way through the level bench: kept as temporary files for an hour at the most, so that a correction
 * needs no second upload, and no more than a few at a time. They are no part of the notebook.
 */
final class LevelUploads implements AutoCloseable {
    /** The most that one upload may hold: forty minutes of six channels at 48 kHz and 24 bit. */
    static final long MOST_BYTES = 2L << 30;

    private static final int MOST_KEPT = 4;
    private static final int MOST_FILES = 24;
    private static final Duration KEPT_FOR = Duration.ofHours(1);

    private final Clock clock;
    private final Map<UUID, Upload> kept = new ConcurrentHashMap<>();

    LevelUploads(Clock clock) {
        this.clock = clock;
    }

    /** One recording: its files in the order they came, and how far it has been measured. */
    static final class Upload {
        private final UUID id = UUID.randomUUID();
        private final Instant since;
        private final Path folder;
        private final List<Path> files = new ArrayList<>();
        private volatile double fraction;

        private Upload(Instant since, Path folder) {
            this.since = since;
            this.folder = folder;
        }

        UUID id() {
            return id;
        }

        List<Path> files() {
            return List.copyOf(files);
        }

        double fraction() {
            return fraction;
        }

        void at(double reached) {
            fraction = reached;
        }

        /** What the player called it. */
        String name() {
            String first = files.get(0).getFileName().toString();
            return files.size() == 1 ? first : first + " and " + (files.size() - 1) + " more";
        }
    }

    /** Takes one file from the body of a request. */
    Upload receive(Context exchange, String name) {
        Upload upload = open();
        try (InputStream body = exchange.bodyInputStream()) {
            write(upload, name, body, MOST_BYTES);
        } catch (IOException cutShort) {
            discard(upload);
            throw endedEarly();
        } catch (Problem problem) {
            discard(upload);
            throw problem;
        }
        return keep(upload);
    }

    /** Takes several files, one a part. */
    Upload receive(List<UploadedFile> parts) {
        if (parts.isEmpty() || parts.size() > MOST_FILES) {
            throw new IllegalArgumentException(
                    parts.size() + " files; send 2 to 8 mono files, one per input, or one per string and loudness");
        }
        Upload upload = open();
        long left = MOST_BYTES;
        try {
            for (UploadedFile part : parts) {
                try (InputStream content = part.content()) {
                    left -= write(upload, part.filename(), content, left);
                }
            }
        } catch (IOException cutShort) {
            discard(upload);
            throw endedEarly();
        } catch (Problem problem) {
            discard(upload);
            throw problem;
        }
        return keep(upload);
    }

    private static Problem endedEarly() {
        return new Problem(400, "upload-cut-short", "The upload ended too early", "Send the file again.");
    }

    /** A recording that is still kept. */
    Upload find(UUID id) {
        sweep();
        Upload upload = kept.get(id);
        if (upload == null) {
            throw gone();
        }
        return upload;
    }

    static Problem gone() {
        return new Problem(
                404,
                "no-such-upload",
                "This recording is no longer here",
                "Recordings are kept for an hour, the newest few of them; send the file again.");
    }

    private Upload open() {
        sweep();
        try {
            return new Upload(clock.instant(), Files.createTempDirectory("rosinbook-levels"));
        } catch (IOException problem) {
            throw full();
        }
    }

    private static Problem full() {
        return new Problem(
                507,
                "no-room",
                "There is no room for this recording",
                "The disk for temporary files is full; make room on it, or send a shorter recording.");
    }

    private static long write(Upload upload, String name, InputStream from, long mostBytes) throws IOException {
        Path file = upload.folder.resolve(plain(name, upload.files.size() + 1));
        byte[] block = new byte[1 << 16];
        long written = 0;
        try (OutputStream to = create(file)) {
            for (int read = read(from, block); read >= 0; read = read(from, block)) {
                written += read;
                if (written > mostBytes) {
                    throw new Problem(
                            413,
                            "too-large",
                            "This is too large",
                            "A recording may have " + MOST_BYTES + " bytes; send a shorter one: a minute is enough.");
                }
                to.write(block, 0, read);
            }
        } catch (UncheckedIOException cutShort) {
            throw cutShort.getCause();
        } catch (IOException diskFull) {
            throw full();
        }
        upload.files.add(file);
        return written;
    }

    private static OutputStream create(Path file) throws IOException {
        return Files.newOutputStream(file, java.nio.file.StandardOpenOption.CREATE_NEW);
    }

    /** Told apart from trouble with our own disk. */
    private static int read(InputStream from, byte[] block) {
        try {
            return from.read(block);
        } catch (IOException cutShort) {
            throw new UncheckedIOException(new EOFException(cutShort.getMessage()));
        }
    }

    /** A name that is safe on any disk, and unlike the others. */
    private static String plain(String name, int number) {
        String last = name == null ? "" : name.replaceAll(".*[/\\\\]", "");
        String safe = last.replaceAll("[^\\p{L}\\p{N} ._-]", "_").replaceAll("^[. ]+", "");
        String shortened = safe.substring(Math.max(0, safe.length() - 60));
        return number == 1 && !shortened.isBlank() ? shortened : number + " " + shortened;
    }

    private Upload keep(Upload upload) {
        kept.put(upload.id(), upload);
        while (kept.size() > MOST_KEPT) {
            kept.values().stream().min(Comparator.comparing(each -> each.since)).ifPresent(this::forget);
        }
        return upload;
    }

    private void sweep() {
        Instant oldest = clock.instant().minus(KEPT_FOR);
        kept.values().stream().filter(each -> each.since.isBefore(oldest)).forEach(this::forget);
    }

    /** For one that turned out to be no recording, too. */
    void forget(Upload upload) {
        kept.remove(upload.id());
        discard(upload);
    }

    private static void discard(Upload upload) {
        try (Stream<Path> left = Files.walk(upload.folder)) {
            left.sorted(Comparator.reverseOrder()).forEach(path -> path.toFile().delete());
        } catch (IOException gone) {
            upload.folder.toFile().deleteOnExit();
        }
    }

    @Override
    public void close() {
        List.copyOf(kept.values()).forEach(this::forget);
    }
}
