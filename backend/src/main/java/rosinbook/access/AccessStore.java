package rosinbook.access;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Where players, their invitations and their sessions are kept; of every token only the SHA-256. Closed accounts are not found. */
public interface AccessStore {
    /** Every player, by name. */
    List<Player> players();

    /** The account of that name, however it is capitalised. */
    Optional<Account> account(PlayerName name);

    /** The account with that id. */
    Optional<Account> account(UUID playerId);

    /** The keeper's account; empty if nobody has set the place up yet. */
    Optional<Account> keeper();

    /**
     * Adds the keeper, who owns every notebook that has no owner.
     *
     * @throws NameTaken if the name is another player's
     */
    void addKeeper(Player keeper, String hash, Instant when);

    /**
     * Adds a player who has not joined yet, and the link that lets them.
     *
     * @throws NameTaken if the name is another player's
     */
    void invite(Player player, String tokenSha256, Instant now, Instant endsAt);

    /** Makes another link for a player; one made before opens nothing any more. Returns false if there is no such player. */
    boolean inviteAgain(UUID playerId, String tokenSha256, Instant endsAt);

    /** Whose link this is; empty if there is none, or it is out of date. */
    Optional<Player> invited(String tokenSha256, Instant now);

    /**
     * Uses a link up: sets the passphrase and ends the player's sessions. A player who joins for the first time gets a
     * notebook of their own.
     *
     * @return the player; empty if there is no such link any more, and nothing was changed
     */
    Optional<Player> join(String tokenSha256, String hash, Instant now);

    /**
     * Sets or changes a passphrase; ends the player's sessions, and what invitation there was. Whose first one it is has
     * joined, and gets a notebook of their own.
     */
    void setHash(UUID playerId, String hash);

    /**
     * Changes a passphrase for somebody who has proved that they know it; ends the player's sessions but the one with this
     * token, and what invitation there was.
     *
     * @param provedHash of the passphrase they know
     * @return false if that is not the player's passphrase any more, and nothing was changed
     */
    boolean changeHash(UUID playerId, String provedHash, String hash, String sparedTokenSha256);

    /**
     * Closes an account and ends its sessions. Notebooks that nobody else owns are the heir's from then on.
     *
     * @return false if there is no such player
     */
    boolean close(UUID playerId, Optional<UUID> heirId, Instant when);

    /**
     * Begins a session; those that are over are forgotten.
     *
     * @param hash of the passphrase that proved who it is
     * @return false if that is not the player's passphrase any more, and nothing was begun
     */
    boolean begin(Session session, String tokenSha256, String hash);

    /** The session with this token, if it has not ended. */
    Optional<Session> session(String tokenSha256, Instant now);

    /** A player's sessions that have not ended, the newest first. */
    List<Session> sessions(UUID playerId, Instant now);

    /** The notebook that is open in a session from now on. */
    void open(UUID sessionId, UUID notebookId);

    /** Ends a session; nothing happens if there is none. */
    void end(String tokenSha256);

    /** Ends one of a player's sessions. Returns false if they have no such session. */
    boolean end(UUID playerId, UUID sessionId);

    /** Ends a player's sessions but this one. */
    void endOthers(UUID playerId, UUID sparedSessionId);
}
