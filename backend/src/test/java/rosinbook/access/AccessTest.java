package rosinbook.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Proxy;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.testing.TestDatabase;

class AccessTest {
    private static final Instant NOW = Instant.parse("2026-11-12T20:00:00Z");
    private static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);
    private static final PlayerName ADA = new PlayerName("Ada");
    private static final String HERE = "198.51.100.7";

    private final TestDatabase database = TestDatabase.fresh();
    private final AccessStore store = new DatabaseAccessStore(database.database());
    private final SecureRandom random = new SecureRandom();
    private final Access access = new Access(store, CLOCK, random);

    @AfterEach
    void close() {
        database.close();
    }

    /** The same, but after a player's account was read by its id, something happens before anything else is asked. */
    private AccessStore interrupted(Runnable meanwhile) {
        return (AccessStore) Proxy.newProxyInstance(
                AccessStore.class.getClassLoader(), new Class<?>[] {AccessStore.class}, (self, asked, arguments) -> {
                    Object answer = asked.invoke(store, arguments);
                    if (asked.getName().equals("account") && arguments[0] instanceof UUID) {
                        meanwhile.run();
                    }
                    return answer;
                });
    }

    /** The player has taken the account back by an invitation; a stranger who knows the old words is still in a session. */
    @Test
    void a_passphrase_that_was_changed_meanwhile_is_not_changed_by_who_knew_the_one_before() {
        Passphrase known = new Passphrase("known to a stranger too");
        Passphrase hers = new Passphrase("only Ada knows these words");
        access.setPassphrase(ADA, known);
        String token = access.signIn("Ada", known.text(), HERE).token().orElseThrow();
        Session session = access.session(token).orElseThrow();
        String link = "the link's token";
        store.inviteAgain(session.player().id(), new Token(link).sha256(), NOW.plus(Duration.ofDays(1)));
        AccessStore joinedMeanwhile = interrupted(() -> assertTrue(
                new Invitations(store, access, CLOCK, random).join(link, hers).isPresent()));
        Access.Change change = new Access(joinedMeanwhile, CLOCK, random)
                .changePassphrase(session, token, known.text(), new Passphrase("chosen by the stranger"), HERE);
        assertFalse(change.isChanged());
        assertTrue(access.signIn("Ada", hers.text(), HERE).token().isPresent());
    }

    /** The hash that is kept here fails whoever checks against it. */
    @Test
    void what_is_too_short_or_too_long_for_a_passphrase_is_refused_and_not_hashed() {
        store.addKeeper(new Player(UUID.randomUUID(), ADA, true, true), "no hash at all", NOW);
        for (String typed : new String[] {"", "fourteen chars", "x".repeat(Passphrase.LONGEST + 1)}) {
            assertEquals(Optional.empty(), access.signIn("Ada", typed, HERE).token());
        }
    }

    @Test
    void what_cannot_be_a_passphrase_is_a_try_like_any_other() {
        for (int i = 0; i < 5; i++) {
            access.signIn("Ada", "", HERE);
        }
        assertFalse(access.signIn("Ada", "", HERE).delay().isZero());
    }
}
