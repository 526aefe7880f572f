package rosinbook.access;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Base64;
import java.util.Optional;
import rosinbook.notebook.ContentJson;

/** Signing in and out. Safe for use by several threads. */
public final class Access {
    /** How long a session lasts. */
    public static final Duration SESSION = Duration.ofDays(30);

    private final AccessStore store;
    private final Clock clock;
    private final SecureRandom random;
    private final Attempts attempts = new Attempts();

    public Access(AccessStore store, Clock clock, SecureRandom random) {
        this.store = store;
        this.clock = clock;
        this.random = random;
    }

    /** Whether the owner has set a passphrase. */
    public boolean hasPassphrase() {
        return store.passphraseHash().isPresent();
    }

    /** Sets or changes the owner's passphrase and ends every session. */
    public void setPassphrase(Passphrase passphrase) {
        store.setPassphraseHash(passphrase.hash(), now());
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    /**
     * What came of trying to sign in.
     *
     * @param token opens a session; empty if the passphrase was wrong or it is too early to try again
     * @param delay before the next try; zero if none is needed
     */
    public record Outcome(Optional<String> token, Duration delay) {}

    /** Tries a passphrase from an address. */
    public Outcome signIn(String typed, String address) {
        Instant now = now();
        Duration wait = attempts.waiting(address, now);
        if (!wait.isZero()) {
            return new Outcome(Optional.empty(), wait);
        }
        boolean isRight = store.passphraseHash()
                .filter(hash -> Passphrase.matches(typed, hash))
                .isPresent();
        if (!isRight) {
            attempts.wrong(address, now);
            return new Outcome(Optional.empty(), attempts.waiting(address, now));
        }
        attempts.right(address);
        byte[] bytes = new byte[16];
        random.nextBytes(bytes);
        String token = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        store.begin(ContentJson.sha256(token), now, now.plus(SESSION));
        return new Outcome(Optional.of(token), Duration.ZERO);
    }

    /** Whether this token belongs to a session that has not ended. */
    public boolean isSignedIn(String token) {
        return store.isOpen(ContentJson.sha256(token), now());
    }

    public void signOut(String token) {
        store.end(ContentJson.sha256(token));
    }
}
