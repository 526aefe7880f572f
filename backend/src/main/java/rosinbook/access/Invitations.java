package rosinbook.access;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Players, and the links by which they join: each opens once. Safe for use by several threads. */
public final class Invitations {
    /** How long an invitation opens. */
    public static final Duration OPEN_FOR = Duration.ofDays(7);

    private final AccessStore store;
    private final Access access;
    private final Clock clock;
    private final SecureRandom random;

    /**
     * Inviting to where these players are kept.
     *
     * @param access signs in whoever joins
     * @param random of tokens
     */
    public Invitations(AccessStore store, Access access, Clock clock, SecureRandom random) {
        this.store = store;
        this.access = access;
        this.clock = clock;
        this.random = random;
    }

    /**
     * An invitation; its token cannot be shown again.
     *
     * @param endsAt when it stops opening
     */
    public record Invitation(Player player, String token, Instant endsAt) {
        /** Nothing of the token: it must not end up in a log. */
        @Override
        public String toString() {
            return "Invitation[" + player.name() + "]";
        }
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    /** Every player, by name. */
    public List<Player> players() {
        return store.players();
    }

    /**
     * A new player, who joins by the link.
     *
     * @throws NameTaken if the name is another player's
     */
    public Invitation invite(PlayerName name) {
        Player player = new Player(UUID.randomUUID(), name, false, false);
        Token token = Token.random(random);
        Instant endsAt = now().plus(OPEN_FOR);
        store.invite(player, token.sha256(), now(), endsAt);
        return new Invitation(player, token.text(), endsAt);
    }

    /** Another link, instead of the one before, also for who forgot their passphrase. Empty if there is no such player. */
    public Optional<Invitation> inviteAgain(UUID playerId) {
        Token token = Token.random(random);
        Instant endsAt = now().plus(OPEN_FOR);
        return store.account(playerId)
                .map(Account::player)
                .filter(player -> store.inviteAgain(player.id(), token.sha256(), endsAt))
                .map(player -> new Invitation(player, token.text(), endsAt));
    }

    /** Whom a link invites; empty if it was used, or is out of date, or never was. */
    public Optional<Player> invited(String token) {
        return store.invited(new Token(token).sha256(), now());
    }

    /**
     * Uses a link: sets the passphrase, and signs in.
     *
     * @return the token of the session; empty if the link opens nothing, and nothing was changed
     */
    public Optional<String> join(String token, Passphrase passphrase) {
        String sha256 = new Token(token).sha256();
        if (store.invited(sha256, now()).isEmpty()) {
            return Optional.empty();
        }
        Optional<String> hash = Optional.of(passphrase.hash());
        return store.join(sha256, hash.get(), now()).flatMap(player -> access.begin(new Account(player, hash)));
    }

    /**
     * Closes an account. Notebooks that nobody else owns are the keeper's from then on.
     *
     * @return false if there is no such player
     * @throws KeeperStays if it is the keeper's account
     */
    public boolean close(UUID playerId) {
        Optional<UUID> keeper = store.keeper().map(account -> account.player().id());
        if (keeper.filter(playerId::equals).isPresent()) {
            throw new KeeperStays();
        }
        return store.close(playerId, keeper, now());
    }
}
