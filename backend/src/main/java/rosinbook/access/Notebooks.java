package rosinbook.access;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Notebooks and whom they are opened to. Where no player is given, it is somebody at the computer itself, who owns them all. */
public final class Notebooks {
    private final NotebookStore store;
    private final AccessStore players;
    private final Clock clock;

    /**
     * The notebooks that are kept there.
     *
     * @param players among whom the keeper is, who owns what is begun at the computer itself
     */
    public Notebooks(NotebookStore store, AccessStore players, Clock clock) {
        this.store = store;
        this.players = players;
        this.clock = clock;
    }

    /** Those that may be read, the first one made first. */
    public List<NotebookEntry> of(Optional<Player> player) {
        return player.map(Player::id).map(store::ofPlayer).orElseGet(store::all);
    }

    /** A notebook; empty if there is none, or it may not be read: nobody can tell the one from the other. */
    public Optional<NotebookEntry> find(UUID notebookId, Optional<Player> player) {
        return player.map(Player::id).map(id -> store.find(notebookId, id)).orElseGet(() -> store.find(notebookId));
    }

    /** What may be done in it; empty if there is none, or it may not be read. */
    public Optional<Right> right(UUID notebookId, Optional<Player> player) {
        return player.map(Player::id)
                .map(id -> store.right(notebookId, id))
                .orElseGet(() -> store.exists(notebookId) ? Optional.of(Right.OWN) : Optional.empty());
    }

    /**
     * A new one. At the computer itself it is the keeper's, once there is one.
     *
     * @param title 1 to {@value NotebookEntry#LONGEST_TITLE} characters
     */
    public NotebookEntry add(String title, Optional<Player> player) {
        UUID id = UUID.randomUUID();
        Optional<UUID> owner =
                player.or(() -> players.keeper().map(Account::player)).map(Player::id);
        store.add(id, title, owner, clock.instant().truncatedTo(ChronoUnit.MICROS));
        return find(id, player).orElseThrow();
    }

    /** Another title, of 1 to {@value NotebookEntry#LONGEST_TITLE} characters. */
    public void rename(UUID notebookId, String title) {
        store.rename(notebookId, title);
    }

    /** Its members, owners first, then by name. */
    public List<Member> members(UUID notebookId) {
        return store.members(notebookId);
    }

    /**
     * Gives a player a right. Returns false if there is no such player.
     *
     * @throws LastOwner if nobody would own it any more
     */
    public boolean let(UUID notebookId, UUID playerId, Right may) {
        return store.let(notebookId, playerId, may);
    }

    /**
     * Takes a player's right away. Returns false if they had none.
     *
     * @throws LastOwner if nobody would own it any more
     */
    public boolean remove(UUID notebookId, UUID playerId) {
        return store.remove(notebookId, playerId);
    }
}
