package rosinbook.access;

import java.time.Duration;
import java.time.Instant;

/**
 * Wrong tries, counted by address and, more strictly, by name and address together. Not by name alone: then anybody could
 * keep a player out.
 *
 * @see "OWASP ASVS 5.0, 6.3.1: brute force is prevented, without lockout by malicious requests (6.1.1)"
 */
final class Throttle {
    private final Attempts byAddress = new Attempts(20);
    private final Attempts byName = new Attempts(5);

    /** Somebody who tries: from where, and as whom. */
    record Guesser(String address, String name) {
        private String both() {
            return name + " from " + address;
        }
    }

    /** How long to wait before the next try; zero if there is no need, and then the try is counted. */
    synchronized Duration begin(Guesser guesser, Instant now) {
        Duration wait = waiting(guesser, now);
        if (wait.isZero()) {
            byAddress.count(guesser.address(), now);
            byName.count(guesser.both(), now);
        }
        return wait;
    }

    Duration waiting(Guesser guesser, Instant now) {
        Duration address = byAddress.waiting(guesser.address(), now);
        Duration name = byName.waiting(guesser.both(), now);
        return address.compareTo(name) > 0 ? address : name;
    }

    /** The try was right. Whoever has an account cannot use it to go on guessing another's: the address is still counted. */
    void right(Guesser guesser, Instant now) {
        byAddress.takeBack(guesser.address(), now);
        byName.forget(guesser.both());
    }
}
