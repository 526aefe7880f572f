package rosinbook.cli;

import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import rosinbook.store.Backups;

/** Looks from time to time whether a backup is due: soon after the start, and then often enough to try again after a failure. */
final class DailyBackups implements AutoCloseable {
    private static final long FIRST_SECONDS = 5;
    private static final long NEXT_SECONDS = 600;

    private final ScheduledExecutorService worker = new ScheduledThreadPoolExecutor(1, work -> {
        Thread thread = new Thread(work, "backups");
        thread.setDaemon(true);
        return thread;
    });

    DailyBackups(Backups backups) {
        worker.scheduleWithFixedDelay(backups::makeIfDue, FIRST_SECONDS, NEXT_SECONDS, TimeUnit.SECONDS);
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
