package rosinbook.access;

import java.util.Optional;

/**
 * A player and how they prove it.
 *
 * @param hash of the passphrase; empty until they have joined
 */
public record Account(Player player, Optional<String> hash) {
    /** Nothing of the hash: it must not end up in a log. */
    @Override
    public String toString() {
        return "Account[" + player.name() + "]";
    }
}
