package rosinbook.access;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Slows down whoever guesses: after some wrong tries, each further one doubles the wait, up to an hour. An hour without a
 * try after that, and all is forgotten.
 */
final class Attempts {
    private static final Duration FIRST_WAIT = Duration.ofSeconds(2);
    private static final Duration LONGEST_WAIT = Duration.ofHours(1);
    private static final Duration FORGOTTEN_AFTER = Duration.ofHours(1);
    private static final int KEPT = 10_000;

    private record Tries(int count, Instant blockedUntil) {}

    private final int free;
    private final Map<String, Tries> byGuesser = new LinkedHashMap<>() {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Tries> eldest) {
            return size() > KEPT;
        }
    };

    /** @param free the try of this number is the first that has to be waited after */
    Attempts(int free) {
        this.free = free;
    }

    /** How long this guesser must wait before the next try; zero if they need not. */
    synchronized Duration waiting(String guesser, Instant now) {
        Tries tries = byGuesser.get(guesser);
        return tries == null || !now.isBefore(tries.blockedUntil())
                ? Duration.ZERO
                : Duration.between(now, tries.blockedUntil());
    }

    /** Counts a try before it is known whether it is right: many at once must not slip through. */
    synchronized void count(String guesser, Instant now) {
        Tries before = byGuesser.remove(guesser);
        boolean isNew = before == null || now.isAfter(before.blockedUntil().plus(FORGOTTEN_AFTER));
        int count = isNew ? 1 : before.count() + 1;
        byGuesser.put(guesser, new Tries(count, now.plus(waitAfter(count))));
    }

    private Duration waitAfter(int count) {
        if (count < free) {
            return Duration.ZERO;
        }
        Duration wait = FIRST_WAIT.multipliedBy(1L << Math.min(count - free, 20));
        return wait.compareTo(LONGEST_WAIT) < 0 ? wait : LONGEST_WAIT;
    }

    /** A try was right: all earlier ones are forgotten. */
    synchronized void forget(String guesser) {
        byGuesser.remove(guesser);
    }

    /** A try was right, but others may not have been: only this one is taken back. */
    synchronized void takeBack(String guesser, Instant now) {
        byGuesser.computeIfPresent(
                guesser, (same, tries) -> tries.count() == 1 ? null : new Tries(tries.count() - 1, now));
    }
}
