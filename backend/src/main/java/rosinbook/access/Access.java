package rosinbook.access;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Semaphore;

/** Signing in and out, and passphrases. Safe for use by several threads. */
public final class Access {
    /** How long a session lasts. */
    public static final Duration SESSION = Duration.ofDays(30);

    /** What the keeper is called unless they say otherwise. */
    public static final PlayerName OWNER = new PlayerName("owner");

    /**
     * Each check takes 19 MiB for a while; more at once would let strangers use the memory up. The others wait, and are no
     * more than may send a body at once: without one, nothing was typed that is checked.
     */
    private static final int CHECKS_AT_ONCE = 4;

    /** Nobody's passphrase: checked where there is no player, so that it takes as long as where there is one. */
    private static final String NOBODYS_HASH = new Passphrase("nobody has this passphrase").hash();

    private final AccessStore store;
    private final Clock clock;
    private final SecureRandom random;
    private final Throttle throttle = new Throttle();
    private final Semaphore checks = new Semaphore(CHECKS_AT_ONCE, true);

    /**
     * Signing in where these players are kept; wrong tries are counted in this object alone.
     *
     * @param random of tokens
     */
    public Access(AccessStore store, Clock clock, SecureRandom random) {
        this.store = store;
        this.clock = clock;
        this.random = random;
    }

    /** Whether there is a keeper who can sign in. */
    public boolean hasPassphrase() {
        return store.keeper().flatMap(Account::hash).isPresent();
    }

    /** Sets or changes the keeper's passphrase and ends their sessions; a keeper called "owner" is made if there is none. */
    public void setPassphrase(Passphrase passphrase) {
        store.keeper()
                .ifPresentOrElse(
                        keeper -> store.setHash(keeper.player().id(), passphrase.hash()),
                        () -> addKeeper(OWNER, passphrase));
    }

    /**
     * Sets or changes a player's passphrase and ends their sessions; the first one is the keeper, and is made.
     *
     * @throws IllegalArgumentException if there is a keeper, but no player of that name
     */
    public void setPassphrase(PlayerName name, Passphrase passphrase) {
        if (store.keeper().isEmpty()) {
            addKeeper(name, passphrase);
            return;
        }
        Account account = store.account(name)
                .orElseThrow(() -> new IllegalArgumentException(
                        "there is no player called " + name + "; the keeper invites players on the page \"People\""));
        store.setHash(account.player().id(), passphrase.hash());
    }

    private void addKeeper(PlayerName name, Passphrase passphrase) {
        store.addKeeper(new Player(UUID.randomUUID(), name, true, true), passphrase.hash(), now());
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    /**
     * What came of trying to sign in.
     *
     * @param token opens a session; empty if name or passphrase was wrong, or it is too early to try again
     * @param delay before the next try; zero if none is needed
     */
    public record Outcome(Optional<String> token, Duration delay) {
        /** Nothing of the token: it must not end up in a log. */
        @Override
        public String toString() {
            return "Outcome[" + (token.isPresent() ? "signed in" : "refused") + ", " + delay + "]";
        }
    }

    /** Tries a name and a passphrase from an address. A name that is nobody's is answered like a wrong passphrase. */
    public Outcome signIn(String name, String typed, String address) {
        Optional<PlayerName> who = parsed(name);
        Throttle.Guesser guesser =
                new Throttle.Guesser(address, who.map(PlayerName::lower).orElse(""));
        Duration wait = throttle.begin(guesser, now());
        if (!wait.isZero()) {
            return new Outcome(Optional.empty(), wait);
        }
        Optional<Account> account = who.flatMap(store::account);
        Optional<String> token = matches(typed, account) ? begin(account.orElseThrow()) : Optional.empty();
        if (token.isEmpty()) {
            return new Outcome(Optional.empty(), throttle.waiting(guesser, now()));
        }
        throttle.right(guesser, now());
        return new Outcome(token, Duration.ZERO);
    }

    private static Optional<PlayerName> parsed(String name) {
        try {
            return Optional.of(new PlayerName(name));
        } catch (IllegalArgumentException noName) {
            return Optional.empty();
        }
    }

    /** What has not a passphrase's length is wrong whoever it is, and is not worth a check. */
    private boolean matches(String typed, Optional<Account> account) {
        if (!Passphrase.hasItsLength(typed)) {
            return false;
        }
        Optional<String> hash = account.flatMap(Account::hash);
        checks.acquireUninterruptibly();
        try {
            return Passphrase.matches(typed, hash.orElse(NOBODYS_HASH)) && hash.isPresent();
        } finally {
            checks.release();
        }
    }

    /**
     * Begins a session for somebody who has proved who they are.
     *
     * @return its token; empty if the passphrase was changed meanwhile
     */
    Optional<String> begin(Account proved) {
        Token token = Token.random(random);
        Instant now = now();
        Session session = new Session(UUID.randomUUID(), proved.player(), Optional.empty(), now, now.plus(SESSION));
        return store.begin(session, token.sha256(), proved.hash().orElseThrow())
                ? Optional.of(token.text())
                : Optional.empty();
    }

    /**
     * What came of trying to change a passphrase.
     *
     * @param isChanged false if the current one was wrong or was changed meanwhile, or it is too early to try again
     * @param delay before the next try; zero if none is needed
     */
    public record Change(boolean isChanged, Duration delay) {}

    /** Changes the passphrase of whoever has this session, and ends their other sessions. */
    public Change changePassphrase(Session session, String token, String current, Passphrase next, String address) {
        Player player = session.player();
        Throttle.Guesser guesser = new Throttle.Guesser(address, player.name().lower());
        Duration wait = throttle.begin(guesser, now());
        if (!wait.isZero()) {
            return new Change(false, wait);
        }
        Optional<Account> account = store.account(player.id());
        if (!matches(current, account)
                || !store.changeHash(
                        player.id(),
                        account.flatMap(Account::hash).orElseThrow(),
                        next.hash(),
                        new Token(token).sha256())) {
            return new Change(false, throttle.waiting(guesser, now()));
        }
        throttle.right(guesser, now());
        return new Change(true, Duration.ZERO);
    }

    /** The session that this token opens; empty if there is none, or it has ended. */
    public Optional<Session> session(String token) {
        return store.session(new Token(token).sha256(), now());
    }

    /** A player's sessions that have not ended, the newest first. */
    public List<Session> sessions(Player player) {
        return store.sessions(player.id(), now());
    }

    /** The notebook that is open in a session from now on. */
    public void open(Session session, UUID notebookId) {
        store.open(session.id(), notebookId);
    }

    /** Ends the session that this token opens; nothing happens if it opens none. */
    public void signOut(String token) {
        store.end(new Token(token).sha256());
    }

    /** Ends one of a player's sessions. Returns false if they have no such session. */
    public boolean end(Player player, UUID sessionId) {
        return store.end(player.id(), sessionId);
    }

    /** Ends every other session of whoever has this one. */
    public void endOthers(Session session) {
        store.endOthers(session.player().id(), session.id());
    }
}
