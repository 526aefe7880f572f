package rosinbook.access;

import java.time.Instant;
import java.util.Optional;

/** Where the owner's passphrase and the sessions are kept. */
public interface AccessStore {
    /** Hash of the owner's passphrase; empty if none was ever set. */
    Optional<String> passphraseHash();

    /** Sets or changes the owner's passphrase and ends every session. */
    void setPassphraseHash(String hash, Instant when);

    /** Begins a session. */
    void begin(String tokenSha256, Instant beganAt, Instant endsAt);

    /** Whether there is such a session that has not ended. */
    boolean isOpen(String tokenSha256, Instant now);

    /** Ends a session; nothing happens if there is none. */
    void end(String tokenSha256);
}
