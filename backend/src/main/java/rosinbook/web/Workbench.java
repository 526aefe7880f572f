package rosinbook.web;

import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/**
 * Where benches compute: as many at once as there are processors, each for so long and no longer. What takes too long is
 * interrupted; so nothing that is done here may touch the database, whose files an interrupted thread would close. Safe for all
 * threads.
 */
final class Workbench implements AutoCloseable {
    static final int SEATS = Math.max(2, Runtime.getRuntime().availableProcessors());

    private final Semaphore free = new Semaphore(SEATS, true);
    private final Patience patience;
    private final ExecutorService workers = Executors.newCachedThreadPool(work -> {
        Thread thread = new Thread(work, "bench");
        thread.setDaemon(true);
        return thread;
    });

    Workbench(Patience patience) {
        this.patience = patience;
    }

    /**
     * Computes, and waits for it.
     *
     * @throws PastLimit if no bench gets free in time, or it takes too long
     */
    <T> T compute(Callable<T> work) throws IOException {
        try {
            if (!free.tryAcquire(patience.waiting().toMillis(), TimeUnit.MILLISECONDS)) {
                throw new PastLimit(Limit.WAITING_SECONDS);
            }
            return await(workers.submit(() -> {
                try {
                    return work.call();
                } finally {
                    free.release();
                }
            }));
        } catch (InterruptedException stopping) {
            Thread.currentThread().interrupt();
            throw new PastLimit(Limit.WAITING_SECONDS);
        }
    }

    private <T> T await(Future<T> result) throws IOException, InterruptedException {
        Duration most = patience.computing();
        try {
            return result.get(most.toMillis(), TimeUnit.MILLISECONDS);
        } catch (TimeoutException tooLong) {
            result.cancel(true);
            throw new PastLimit(Limit.COMPUTING_SECONDS);
        } catch (ExecutionException problem) {
            throw unwrapped(problem.getCause());
        }
    }

    private static RuntimeException unwrapped(Throwable cause) throws IOException {
        if (cause instanceof IOException problem) {
            throw problem;
        }
        if (cause instanceof CancellationException) {
            return new PastLimit(Limit.COMPUTING_SECONDS);
        }
        if (cause instanceof RuntimeException problem) {
            return problem;
        }
        return new IllegalStateException("a bench failed", cause);
    }

    @Override
    public void close() {
        workers.shutdownNow();
    }
}
