package rosinbook.web;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
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
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rosinbook.access.Player;
import rosinbook.level.WavRecording;
import rosinbook.limit.Limit;

/**
 * Recordings on their way through the level bench: kept as temporary files for an hour at the most, so that a correction
 * needs no second upload, and no more than a few at a time. They are no part of the notebook.
 */
final class LevelUploads implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(LevelUploads.class);
    private static final AtomicLong COUNTED = new AtomicLong();

    /** Of one player in one notebook. */
    private static final int MOST_KEPT = 4;

    /** All together; above either, the oldest are let go. */
    private static final long MOST_KEPT_BYTES = 2 * Limit.RECORDING_BYTES.most();

    private static final Duration KEPT_FOR = Duration.ofHours(1);

    /** How often what has been kept for long enough is looked for. */
    private static final Duration SWEPT_EVERY = Duration.ofMinutes(1);

    private final Clock clock;
    private final UploadFolder folder;
    private final ScheduledExecutorService sweeper = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "uploads");
        thread.setDaemon(true);
        return thread;
    });
    private final Map<UUID, Upload> kept = new ConcurrentHashMap<>();
    private final AtOnce arriving = new AtOnce(Limit.UPLOADS_AT_ONCE);

    LevelUploads(Clock clock) {
        this(clock, Path.of(System.getProperty("java.io.tmpdir")), SWEPT_EVERY);
    }

    LevelUploads(Clock clock, Path temporary, Duration sweptEvery) {
        this.clock = clock;
        this.folder = new UploadFolder(temporary);
        sweeper.scheduleWithFixedDelay(this::sweepAll, 0, sweptEvery.toMillis(), TimeUnit.MILLISECONDS);
    }

    /**
     * Whose a recording is; nobody else finds it.
     *
     * @param player empty at the computer itself
     */
    record Owner(Optional<UUID> player, UUID notebook) {
        static Owner of(Context exchange) {
            Visit visit = Visit.of(exchange);
            return new Owner(visit.player().map(Player::id), visit.notebookId());
        }
    }

    /**
     * One file.
     *
     * @param file where it lies, under a name that any disk takes
     * @param name what the player calls it, as far as it can be shown anywhere; never blank
     */
    record Sent(Path file, String name) {
        WavRecording open() throws IOException {
            return WavRecording.open(file, name);
        }
    }

    /** One recording: its files in the order they came, and how far it has been measured. */
    static final class Upload {
        private final UUID id = UUID.randomUUID();
        private final long number = COUNTED.getAndIncrement();
        private final Owner owner;
        private final Instant since;
        private final Path folder;
        private final List<Sent> files = new ArrayList<>();
        private volatile double fraction;
        private volatile long bytes;

        private Upload(Owner owner, Instant since, Path folder) {
            this.owner = owner;
            this.since = since;
            this.folder = folder;
        }

        UUID id() {
            return id;
        }

        List<Sent> files() {
            return List.copyOf(files);
        }

        double fraction() {
            return fraction;
        }

        /** @throws CancellationException if the measuring has taken too long */
        void at(double reached) {
            if (Thread.currentThread().isInterrupted()) {
                throw new CancellationException("measuring took too long");
            }
            fraction = reached;
        }

        /** What the player called it. */
        String name() {
            String first = files.get(0).name();
            return files.size() == 1 ? first : first + " and " + (files.size() - 1) + " more";
        }
    }

    /** Takes one file from the body of a request. */
    Upload receive(Owner owner, String name, InputStream from) {
        arriving.enter();
        try {
            Upload upload = open(owner);
            try (InputStream body = from) {
                write(upload, name, body);
            } catch (IOException | RuntimeException problem) {
                throw refused(upload, problem);
            }
            return keep(upload);
        } finally {
            arriving.leave();
        }
    }

    private static RuntimeException refused(Upload upload, Exception problem) {
        discard(upload);
        if (problem instanceof IOException cutShort) {
            return Body.trouble(cutShort).orElseGet(Body::endedEarly);
        }
        return (RuntimeException) problem;
    }

    /** Takes several files, one a part. */
    Upload receive(Owner owner, Supplier<List<UploadedFile>> sent) {
        arriving.enter();
        try {
            List<UploadedFile> parts = sent.get();
            if (parts.isEmpty()) {
                throw new IllegalArgumentException(
                        "no files; send 2 to 8 mono files, one per input, or one per string and loudness");
            }
            Limit.RECORDING_FILES.check(parts.size());
            Upload upload = open(owner);
            try {
                for (UploadedFile part : parts) {
                    try (InputStream content = part.content()) {
                        write(upload, part.filename(), content);
                    }
                }
            } catch (IOException | RuntimeException problem) {
                throw refused(upload, problem);
            }
            return keep(upload);
        } finally {
            arriving.leave();
        }
    }

    /** A recording that is still kept. */
    Upload find(UUID id, Owner owner) {
        sweep();
        Upload upload = kept.get(id);
        if (upload == null || !upload.owner.equals(owner)) {
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

    private Upload open(Owner owner) {
        sweep();
        try {
            return new Upload(owner, clock.instant(), folder.forOne());
        } catch (IOException problem) {
            throw full();
        }
    }

    static Problem full() {
        return new Problem(
                507,
                "no-room",
                "There is no room for temporary files",
                "Their disk is full; make room on it, or send a shorter recording.");
    }

    private static void write(Upload upload, String name, InputStream from) throws IOException {
        int number = upload.files.size() + 1;
        Path file = upload.folder.resolve(number + ".wav");
        byte[] block = new byte[1 << 16];
        try (OutputStream to = create(file)) {
            for (int read = read(from, block); read >= 0; read = read(from, block)) {
                upload.bytes += read;
                Limit.RECORDING_BYTES.check(upload.bytes);
                to.write(block, 0, read);
            }
        } catch (UncheckedIOException cutShort) {
            throw cutShort.getCause();
        } catch (IOException diskFull) {
            throw full();
        }
        upload.files.add(new Sent(file, shown(name, number)));
    }

    private static OutputStream create(Path file) throws IOException {
        return Files.newOutputStream(file, java.nio.file.StandardOpenOption.CREATE_NEW);
    }

    /** Told apart from trouble with our own disk. */
    private static int read(InputStream from, byte[] block) {
        try {
            return from.read(block);
        } catch (IOException cutShort) {
            throw new UncheckedIOException(cutShort);
        }
    }

    /** Its last letters, where each can be shown: the first may have been cut in two. */
    private static String shown(String name, int number) {
        String last = name == null ? "" : name.replaceAll(".*[/\\\\]", "");
        String shortened = last.substring(Math.max(0, last.length() - 60));
        String shown = shortened.replaceAll("[^\\p{L}\\p{N} ._-]", "_").strip();
        return shown.isEmpty() ? Integer.toString(number) : shown;
    }

    private Upload keep(Upload upload) {
        kept.put(upload.id(), upload);
        while (of(upload.owner).count() > MOST_KEPT) {
            forgetOldest(of(upload.owner));
        }
        while (kept.values().stream().mapToLong(each -> each.bytes).sum() > MOST_KEPT_BYTES) {
            forgetOldest(kept.values().stream());
        }
        return upload;
    }

    private Stream<Upload> of(Owner owner) {
        return kept.values().stream().filter(each -> each.owner.equals(owner));
    }

    private void forgetOldest(Stream<Upload> uploads) {
        uploads.min(Comparator.comparing(each -> each.number)).ifPresent(this::forget);
    }

    private void sweep() {
        Instant oldest = oldest();
        kept.values().stream().filter(each -> each.since.isBefore(oldest)).forEach(this::forget);
    }

    private Instant oldest() {
        return clock.instant().minus(KEPT_FOR);
    }

    /** Nobody need use the bench for it. What it throws would end it for good. */
    private void sweepAll() {
        try {
            sweep();
            folder.clearLeft(oldest());
        } catch (RuntimeException problem) {
            LOG.warn("recordings that nobody needs any more could not be removed", problem);
        }
    }

    /** For one that turned out to be no recording, too. */
    void forget(Upload upload) {
        kept.remove(upload.id());
        discard(upload);
    }

    private static void discard(Upload upload) {
        UploadFolder.remove(upload.folder);
    }

    @Override
    public void close() {
        sweeper.shutdownNow();
        List.copyOf(kept.values()).forEach(this::forget);
        try {
            folder.close();
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }
}
