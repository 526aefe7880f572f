package rosinbook.cli;

import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rosinbook.store.Backups;

/** Looks from time to time whether a backup is due: soon after the start, and then often enough to try again after a failure. */
final class DailyBackups implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(DailyBackups.class);
    private static final long FIRST_SECONDS = 5;
    private static final long NEXT_SECONDS = 600;

    private final ScheduledExecutorService worker = new ScheduledThreadPoolExecutor(1, work -> {
        Thread thread = new Thread(work, "backups");
        thread.setDaemon(true);
        return thread;
    });

    DailyBackups(Backups backups) {
        worker.scheduleWithFixedDelay(surviving(backups::makeIfDue), FIRST_SECONDS, NEXT_SECONDS, TimeUnit.SECONDS);
    }

    /** The same work, of which no failure ends the repeating; what would be tried no more is tried again. */
    static Runnable surviving(Runnable work) {
        return () -> {
            try {
                work.run();
            } catch (Throwable problem) {
                LOG.error("No backup could be made; it is tried again soon", problem);
            }
        };
    }

    /** Waits a while for one that is being made. */
    @Override
    public void close() {
        worker.shutdown();
        try {
            worker.awaitTermination(10, TimeUnit.SECONDS);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
