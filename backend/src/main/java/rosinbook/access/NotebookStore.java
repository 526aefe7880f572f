package rosinbook.access;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Where notebooks' titles and members are kept. Closed accounts are members of nothing. */
public interface NotebookStore {
    /** The notebooks a player may at least read, the first one made first. */
    List<NotebookEntry> ofPlayer(UUID playerId);

    /** Every notebook, for whoever owns them all; the first one made first. */
    List<NotebookEntry> all();

    /** A notebook as a player sees it; empty if there is none, or they may not read it. */
    Optional<NotebookEntry> find(UUID notebookId, UUID playerId);

    /** A notebook, for whoever owns them all; empty if there is none. */
    Optional<NotebookEntry> find(UUID notebookId);

    /** What a player may do in a notebook; empty if there is none, or they may not read it. */
    Optional<Right> right(UUID notebookId, UUID playerId);

    /** Whether there is such a notebook. */
    boolean exists(UUID notebookId);

    /** Makes a notebook. */
    void add(UUID notebookId, String title, Optional<UUID> ownerId, Instant when);

    /** Gives it another title. */
    void rename(UUID notebookId, String title);

    /** Its members, owners first, then by name. */
    List<Member> members(UUID notebookId);

    /**
     * Gives a player a right on it, or another one than before. Returns false if there is no such player.
     *
     * @throws LastOwner if nobody would own it any more
     */
    boolean let(UUID notebookId, UUID playerId, Right may);

    /**
     * Takes a player's right away. Returns false if they had none.
     *
     * @throws LastOwner if nobody would own it any more
     */
    boolean remove(UUID notebookId, UUID playerId);
}
