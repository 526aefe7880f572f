package rosinbook.store;

import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * Counts how often shares were opened, and has that written down once a second at most.
 *
 * <p>A page that many open at once would otherwise wait for a forced write each time. What was counted within the last second
 * is lost if the program is killed; it is a figure to look at, nobody's work.
 */
final class Openings implements AutoCloseable {
    private final Consumer<SortedMap<Key, Opened>> writer;
    private final ScheduledThreadPoolExecutor later = new ScheduledThreadPoolExecutor(1, work -> {
        Thread thread = new Thread(work, "openings");
        thread.setDaemon(true);
        return thread;
    });
    private Map<Key, Opened> counted = new HashMap<>();

    /** A share; in an order that is the same everywhere, so that two who write never wait for each other. */
    record Key(UUID notebookId, UUID shareId) implements Comparable<Key> {
        private static final Comparator<Key> ORDER =
                Comparator.comparing(Key::notebookId).thenComparing(Key::shareId);

        @Override
        public int compareTo(Key other) {
            return ORDER.compare(this, other);
        }
    }

    /** How often, and when last. */
    record Opened(int times, Instant last) {
        Opened and(Opened other) {
            return new Opened(times + other.times, last.isAfter(other.last) ? last : other.last);
        }
    }

    /** @param writer may throw; what it was given is then offered again later */
    Openings(Consumer<SortedMap<Key, Opened>> writer) {
        this.writer = writer;
        later.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
    }

    void add(UUID notebookId, UUID shareId, Instant when) {
        merge(new Key(notebookId, shareId), new Opened(1, when));
    }

    private synchronized void merge(Key share, Opened opened) {
        if (counted.isEmpty() && !later.isShutdown()) {
            later.schedule(this::writeIfPossible, 1, TimeUnit.SECONDS);
        }
        counted.merge(share, opened, Opened::and);
    }

    private synchronized SortedMap<Key, Opened> take() {
        SortedMap<Key, Opened> taken = new TreeMap<>(counted);
        counted = new HashMap<>();
        return taken;
    }

    /** Writes down what was counted so far. */
    void write() {
        SortedMap<Key, Opened> now = take();
        if (now.isEmpty()) {
            return;
        }
        try {
            writer.accept(now);
        } catch (RuntimeException problem) {
            now.forEach(this::merge);
            throw problem;
        }
    }

    /** As {@link #write}; what cannot be written now is kept for later. */
    void writeIfPossible() {
        try {
            write();
        } catch (RuntimeException awayOrFull) {
            // it is offered again in a second
        }
    }

    /**
     * Nothing is written by itself any more; what was counted is written now. A write under way is waited for: an interrupt
     * would close an embedded database's file.
     */
    @Override
    public void close() {
        synchronized (this) {
            later.shutdown();
        }
        try {
            later.awaitTermination(10, TimeUnit.SECONDS);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
        writeIfPossible();
    }
}
