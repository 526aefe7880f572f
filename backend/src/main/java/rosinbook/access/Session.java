package rosinbook.access;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * Somebody who signed in, in one browser.
 *
 * @param notebookId the notebook that is open in it; empty if that was never said
 * @param endsAt when they have to sign in again
 */
public record Session(UUID id, Player player, Optional<UUID> notebookId, Instant beganAt, Instant endsAt) {}
