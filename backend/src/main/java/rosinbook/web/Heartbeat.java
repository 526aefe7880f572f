package rosinbook.web;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/**
 * Asks whether something is alive, and does not wait long for an answer; while one is awaited, it does not ask again: whoever
 * comes meanwhile is told the same. Safe for all threads.
 */
final class Heartbeat {
    private static final long PATIENCE_MILLIS = 2_000;

    private final BooleanSupplier isAlive;
    private CompletableFuture<Boolean> asked = CompletableFuture.completedFuture(true);
    private CompletableFuture<Boolean> told = asked;

    Heartbeat(BooleanSupplier isAlive) {
        this.isAlive = isAlive;
    }

    /** Whether it answered in time that it is alive. */
    boolean beats() {
        return told().join();
    }

    private synchronized CompletableFuture<Boolean> told() {
        if (asked.isDone()) {
            asked = CompletableFuture.supplyAsync(isAlive::getAsBoolean);
            told = asked.exceptionally(problem -> false)
                    .completeOnTimeout(false, PATIENCE_MILLIS, TimeUnit.MILLISECONDS);
        }
        return told;
    }
}
