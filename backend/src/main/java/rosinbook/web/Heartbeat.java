package rosinbook.web;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/** Asks whether something is alive, and does not wait long for an answer; while one is awaited, it does not ask again. */
final class Heartbeat {
    private static final long PATIENCE_MILLIS = 2_000;

    private final BooleanSupplier isAlive;
    private CompletableFuture<Boolean> asked = CompletableFuture.completedFuture(true);

    Heartbeat(BooleanSupplier isAlive) {
        this.isAlive = isAlive;
    }

    /** 1 if it answered in time that it is alive, else 0. */
    synchronized double beats() {
        if (!asked.isDone()) {
            return 0;
        }
        asked = CompletableFuture.supplyAsync(isAlive::getAsBoolean);
        return asked.completeOnTimeout(false, PATIENCE_MILLIS, TimeUnit.MILLISECONDS)
                        .exceptionally(problem -> false)
                        .join()
                ? 1
                : 0;
    }
}
