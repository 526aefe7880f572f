package rosinbook.share;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;
import rosinbook.notebook.Kind;

/**
 * A link somebody was given.
 *
 * @param name the player's own, such as "For Jonas"; may be empty
 * @param revision the exact revision it shows; empty if it is kept up to date
 * @param opened how often it was opened
 */
public record Share(
        UUID id,
        String name,
        Kind kind,
        UUID sheetId,
        Optional<Integer> revision,
        Instant createdAt,
        Optional<Instant> expiresAt,
        Optional<Instant> revokedAt,
        Optional<Instant> lastOpenedAt,
        int opened) {
    /** Whether it still opens. */
    public enum State {
        OPEN,
        EXPIRED,
        REVOKED
    }

    /** @throws IllegalArgumentException if the kind cannot be shared, or the name is too long */
    public Share {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(sheetId, "sheetId");
        Objects.requireNonNull(createdAt, "createdAt");
        if (!isShareable(kind)) {
            throw new IllegalArgumentException("kind cannot be shared; share a rig, a recipe or a setlist");
        }
        if (name.length() > 200) {
            throw new PastLimit(Limit.TEXT_LENGTH, "name has " + name.length() + " characters; 200 is the most");
        }
    }

    /** Rigs, recipes and setlists can be shared. */
    public static boolean isShareable(Kind kind) {
        return kind == Kind.RIGS || kind == Kind.RECIPES || kind == Kind.SETLISTS;
    }

    public State state(Instant now) {
        if (revokedAt.isPresent()) {
            return State.REVOKED;
        }
        return expiresAt.isPresent() && !now.isBefore(expiresAt.get()) ? State.EXPIRED : State.OPEN;
    }
}
