package rosinbook.web;

import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/**
 * Where benches compute: as many at once as there are processors, each for so long and no longer. What takes too long is
 * interrupted; so nothing that is done here may touch the database, whose files an interrupted thread would close. Only so many
 * wait for a seat, so that threads are left for those who want none. Safe for all threads.
 */
final class Workbench implements AutoCloseable {
    static final int SEATS = Math.max(2, Runtime.getRuntime().availableProcessors());

    /** As many wait for a seat; whoever comes then is refused at once. */
    static final int MOST_WAITING = 32;

    private final Semaphore free = new Semaphore(SEATS, true);
    private final Semaphore places = new Semaphore(SEATS + MOST_WAITING);
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
     * @throws PastLimit if too many wait already, no bench gets free in time, or it takes too long
     */
    <T> T compute(Callable<T> work) throws IOException {
        if (!places.tryAcquire()) {
            throw new PastLimit(
                    Limit.WAITING_SECONDS,
                    MOST_WAITING + " requests wait for a bench already. " + Limit.WAITING_SECONDS.remedy());
        }
        try {
            if (!free.tryAcquire(patience.waiting().toMillis(), TimeUnit.MILLISECONDS)) {
                throw new PastLimit(Limit.WAITING_SECONDS);
            }
            return await(seated(work));
        } catch (InterruptedException stopping) {
            Thread.currentThread().interrupt();
            throw new PastLimit(Limit.WAITING_SECONDS);
        } finally {
            places.release();
        }
    }

    /** The seat is given back even if the work never begins, because nobody takes it or its time was over before. */
    private <T> Future<T> seated(Callable<T> work) {
        FutureTask<T> task = new FutureTask<>(work);
        try {
            workers.execute(() -> {
                try {
                    task.run();
                } finally {
                    free.release();
                }
            });
        } catch (RuntimeException | Error nobodyTakesIt) {
            free.release();
            throw nobodyTakesIt;
        }
        return task;
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
