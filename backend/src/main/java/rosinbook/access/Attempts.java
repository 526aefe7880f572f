package rosinbook.access;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/** Slows down whoever guesses: after five wrong tries from one address, each further one doubles the wait, up to an hour. */
final class Attempts {
    private static final int FREE = 5;
    private static final Duration FIRST_WAIT = Duration.ofSeconds(2);
    private static final Duration LONGEST_WAIT = Duration.ofHours(1);
    private static final int ADDRESSES = 10_000;

    private record Tries(int wrong, Instant blockedUntil) {}

    private final Map<String, Tries> byAddress = new LinkedHashMap<>() {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Tries> eldest) {
            return size() > ADDRESSES;
        }
    };

    /** How long this address must wait before its next try; zero if it need not. */
    synchronized Duration waiting(String address, Instant now) {
        Tries tries = byAddress.get(address);
        return tries == null || !now.isBefore(tries.blockedUntil())
                ? Duration.ZERO
                : Duration.between(now, tries.blockedUntil());
    }

    synchronized void wrong(String address, Instant now) {
        Tries before = byAddress.remove(address);
        int wrong = before == null ? 1 : before.wrong() + 1;
        byAddress.put(address, new Tries(wrong, now.plus(waitAfter(wrong))));
    }

    private static Duration waitAfter(int wrong) {
        if (wrong < FREE) {
            return Duration.ZERO;
        }
        Duration wait = FIRST_WAIT.multipliedBy(1L << Math.min(wrong - FREE, 20));
        return wait.compareTo(LONGEST_WAIT) < 0 ? wait : LONGEST_WAIT;
    }

    synchronized void right(String address) {
        byAddress.remove(address);
    }
}
