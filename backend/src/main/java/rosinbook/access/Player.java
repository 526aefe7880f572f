package rosinbook.access;

import java.util.UUID;

/**
 * Somebody with an account.
 *
 * @param isKeeper whether they set up the place: they invite players, and see how it fares
 * @param hasJoined whether they have a passphrase yet
 */
public record Player(UUID id, PlayerName name, boolean isKeeper, boolean hasJoined) {}
