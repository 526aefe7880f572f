package rosinbook.web;

import java.util.concurrent.Semaphore;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/** Lets only so many of something happen at once, and refuses the others. Safe for all threads. */
final class AtOnce {
    private final Limit limit;
    private final Semaphore free;

    AtOnce(Limit limit) {
        this.limit = limit;
        this.free = new Semaphore(limit.count());
    }

    /** @throws PastLimit if as many are under way already; else {@link #leave} has to follow */
    void enter() {
        if (!free.tryAcquire()) {
            throw new PastLimit(limit);
        }
    }

    void leave() {
        free.release();
    }
}
