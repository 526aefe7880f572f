package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rosinbook.access.LastOwner;
import rosinbook.access.Member;
import rosinbook.access.NameTaken;
import rosinbook.access.NotebookEntry;
import rosinbook.access.Player;
import rosinbook.access.PlayerName;
import rosinbook.access.Right;
import rosinbook.access.Session;

/** What keeping players, sessions and members means, on whichever database. */
abstract class AccessStoreContract {
    private static final Instant NOW = Instant.parse("2026-11-12T20:00:00.123456Z");
    private static final Instant LATER = NOW.plus(Duration.ofDays(7));
    static final UUID FIRST = DatabaseSheetStore.ONLY_NOTEBOOK;

    private Database database;
    private DatabaseAccessStore players;
    private DatabaseNotebookStore notebooks;
    private Player mira;
    private int tokens;

    /** A fresh, empty database. */
    abstract Database fresh();

    @BeforeEach
    void open() {
        database = fresh();
        DatabaseSheetStore.onlyNotebook(database, NOW);
        players = new DatabaseAccessStore(database);
        notebooks = new DatabaseNotebookStore(database);
        mira = new Player(UUID.randomUUID(), new PlayerName("Mira"), true, true);
        players.addKeeper(mira, "hash", NOW);
    }

    @AfterEach
    void close() {
        if (database != null) {
            database.close();
        }
    }

    private String token() {
        return String.format("%064d", tokens++);
    }

    private Player invited(String name, String token) {
        Player player = new Player(UUID.randomUUID(), new PlayerName(name), false, false);
        players.invite(player, token, NOW, LATER);
        return player;
    }

    final Player joined(String name) {
        String token = token();
        invited(name, token);
        players.join(token, "hash of " + name, NOW).orElseThrow();
        return players.account(new PlayerName(name)).orElseThrow().player();
    }

    private UUID notebookOf(Player player) {
        return notebooks.ofPlayer(player.id()).get(0).id();
    }

    private String signedIn(Player player) {
        String token = token();
        assertTrue(isBegun(player, token, hashOf(player)));
        return token;
    }

    private String hashOf(Player player) {
        return players.account(player.id()).orElseThrow().hash().orElseThrow();
    }

    private boolean isBegun(Player player, String token, String hash) {
        return players.begin(new Session(UUID.randomUUID(), player, Optional.empty(), NOW, LATER), token, hash);
    }

    private boolean isOpen(String token) {
        return players.session(token, NOW).isPresent();
    }

    @Test
    void the_keeper_owns_what_nobody_owned() {
        assertEquals(
                List.of(new NotebookEntry(FIRST, "Rosinbook", Right.OWN, List.of("Mira"))),
                notebooks.ofPlayer(mira.id()));
        assertEquals("hash", players.keeper().orElseThrow().hash().orElseThrow());
    }

    @Test
    void a_name_is_one_players_however_it_is_capitalised_and_free_again_when_the_account_is_closed() {
        Player jonas = joined("Jonas");
        assertThrows(NameTaken.class, () -> invited("JONAS", token()));
        assertEquals(
                jonas.id(),
                players.account(new PlayerName("jOnAs")).orElseThrow().player().id());
        assertTrue(players.close(jonas.id(), Optional.of(mira.id()), NOW));
        assertTrue(players.account(new PlayerName("Jonas")).isEmpty());
        assertTrue(players.account(jonas.id()).isEmpty());
        assertFalse(players.close(jonas.id(), Optional.of(mira.id()), NOW));
        joined("jonas");
        assertEquals(
                List.of("jonas", "Mira"),
                players.players().stream().map(each -> each.name().text()).toList());
    }

    @Test
    void two_who_invite_the_same_name_at_once_make_one_player() throws Exception {
        List<Callable<Boolean>> twice = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            String token = token();
            twice.add(() -> {
                try {
                    invited("Jonas", token);
                    return true;
                } catch (NameTaken second) {
                    return false;
                }
            });
        }
        assertEquals(1, atOnce(twice).stream().filter(isMade -> isMade).count());
    }

    @Test
    void an_owner_who_leaves_while_the_other_ones_account_is_closed_leaves_an_owner() throws Exception {
        for (int round = 0; round < 15; round++) {
            Player jonas = joined("Jonas " + round);
            Player ada = joined("Ada " + round);
            UUID shared = notebookOf(jonas);
            notebooks.let(shared, ada.id(), Right.OWN);
            atOnce(List.of(() -> players.close(jonas.id(), Optional.of(mira.id()), NOW), () -> {
                try {
                    return notebooks.remove(shared, ada.id());
                } catch (LastOwner stays) {
                    return false;
                }
            }));
            assertTrue(notebooks.members(shared).stream().anyMatch(member -> member.may() == Right.OWN));
        }
    }

    private static <T> List<T> atOnce(List<Callable<T>> works) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(works.size());
        CountDownLatch start = new CountDownLatch(1);
        try {
            List<Future<T>> results = new ArrayList<>();
            for (Callable<T> work : works) {
                results.add(threads.submit(() -> {
                    start.await();
                    return work.call();
                }));
            }
            start.countDown();
            List<T> all = new ArrayList<>();
            for (Future<T> result : results) {
                all.add(result.get());
            }
            return all;
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void an_invitation_opens_once_in_time_and_gives_a_notebook_of_ones_own() {
        String token = token();
        Player ada = invited("Ada", token);
        assertFalse(players.players().get(0).hasJoined());
        assertTrue(notebooks.ofPlayer(ada.id()).isEmpty());
        assertTrue(players.invited(token, LATER).isEmpty(), "out of date");
        assertTrue(players.join(token(), "hash", NOW).isEmpty(), "no such link");
        assertEquals(ada, players.join(token, "first", NOW).orElseThrow());
        assertTrue(players.join(token, "second", NOW).isEmpty(), "used");
        assertEquals("first", players.account(ada.id()).orElseThrow().hash().orElseThrow());
        NotebookEntry own = notebooks.ofPlayer(ada.id()).get(0);
        assertEquals("Ada's notebook", own.title());
        assertEquals(Right.OWN, own.may());
    }

    @Test
    void an_invitation_that_two_use_at_once_lets_one_in() throws Exception {
        String token = token();
        invited("Ada", token);
        List<Callable<Boolean>> twice =
                List.of(() -> players.join(token, "one", NOW).isPresent(), () -> players.join(token, "other", NOW)
                        .isPresent());
        assertEquals(1, atOnce(twice).stream().filter(isIn -> isIn).count());
    }

    @Test
    void another_invitation_makes_the_first_useless_and_ends_sessions_when_it_is_used() {
        Player ada = joined("Ada");
        String session = signedIn(ada);
        String first = token();
        String second = token();
        assertTrue(players.inviteAgain(ada.id(), first, LATER));
        assertTrue(players.inviteAgain(ada.id(), second, LATER));
        assertTrue(isOpen(session), "until it is used");
        assertTrue(players.join(first, "stolen", NOW).isEmpty());
        assertTrue(players.join(second, "new", NOW).isPresent());
        assertFalse(isOpen(session));
        assertEquals(1, notebooks.ofPlayer(ada.id()).size(), "who has joined before gets no second notebook");
        assertFalse(players.inviteAgain(UUID.randomUUID(), token(), LATER));
    }

    @Test
    void sessions_end_one_by_one_and_all_but_one() {
        Player ada = joined("Ada");
        Player jonas = joined("Jonas");
        String phone = signedIn(ada);
        String desk = signedIn(ada);
        String other = signedIn(jonas);
        UUID phoneId = players.session(phone, NOW).orElseThrow().id();
        UUID deskId = players.session(desk, NOW).orElseThrow().id();
        assertFalse(players.end(jonas.id(), phoneId), "somebody else's");
        assertTrue(isOpen(phone));
        assertTrue(players.end(ada.id(), phoneId));
        assertFalse(isOpen(phone));
        String third = signedIn(ada);
        players.endOthers(ada.id(), deskId);
        assertTrue(isOpen(desk) && isOpen(other));
        assertFalse(isOpen(third));
        players.end(desk);
        assertFalse(isOpen(desk));
        assertEquals(List.of(), players.sessions(ada.id(), NOW));
    }

    @Test
    void a_session_is_over_when_its_time_is_and_begun_ones_keep_their_notebook() {
        Player ada = joined("Ada");
        String token = signedIn(ada);
        Session session = players.session(token, NOW).orElseThrow();
        assertEquals(Optional.empty(), session.notebookId());
        players.open(session.id(), FIRST);
        assertEquals(
                Optional.of(FIRST), players.session(token, NOW).orElseThrow().notebookId());
        assertTrue(players.session(token, LATER.minusMillis(1)).isPresent());
        assertTrue(players.session(token, LATER).isEmpty());
    }

    @Test
    void a_changed_passphrase_ends_all_sessions_but_the_one_that_changed_it() {
        Player ada = joined("Ada");
        String here = signedIn(ada);
        String there = signedIn(ada);
        String invitation = token();
        players.inviteAgain(ada.id(), invitation, LATER);
        assertTrue(players.changeHash(ada.id(), hashOf(ada), "new", here));
        assertTrue(isOpen(here));
        assertFalse(isOpen(there));
        assertTrue(players.invited(invitation, NOW).isEmpty(), "a link of before is of no use any more");
        players.setHash(ada.id(), "newer");
        assertFalse(isOpen(here));
    }

    @Test
    void who_knows_only_the_passphrase_of_before_cannot_change_it() {
        Player ada = joined("Ada");
        String before = hashOf(ada);
        String stranger = signedIn(ada);
        players.setHash(ada.id(), "new");
        String here = signedIn(ada);
        assertFalse(players.changeHash(ada.id(), before, "the stranger's", stranger));
        assertEquals("new", hashOf(ada));
        assertTrue(isOpen(here));
    }

    @Test
    void no_session_outlives_a_passphrase_that_was_changed_while_it_began() throws Exception {
        Player ada = joined("Ada");
        String late = token();
        String before = hashOf(ada);
        players.setHash(ada.id(), "new");
        assertFalse(isBegun(ada, late, before));
        assertFalse(isOpen(late));
        for (int round = 0; round < 10; round++) {
            String token = token();
            String old = hashOf(ada);
            String next = "hash " + round;
            atOnce(List.of(() -> isBegun(ada, token, old), () -> {
                players.setHash(ada.id(), next);
                return true;
            }));
            assertFalse(isOpen(token), "round " + round);
            assertEquals(next, hashOf(ada));
        }
        String last = token();
        assertTrue(players.close(ada.id(), Optional.of(mira.id()), NOW));
        assertFalse(isBegun(ada, last, "hash 9"));
    }

    @Test
    void a_closed_account_ends_its_sessions_and_leaves_its_notebooks_to_the_heir() {
        Player ada = joined("Ada");
        Player jonas = joined("Jonas");
        UUID alone = notebookOf(ada);
        UUID shared = UUID.randomUUID();
        notebooks.add(shared, "Ours", Optional.of(ada.id()), NOW);
        notebooks.let(shared, jonas.id(), Right.OWN);
        String session = signedIn(ada);
        assertTrue(players.close(ada.id(), Optional.of(mira.id()), NOW));
        assertFalse(isOpen(session));
        assertEquals(Optional.of(Right.OWN), notebooks.right(alone, mira.id()));
        assertEquals(Optional.empty(), notebooks.right(shared, mira.id()), "somebody else owns it");
        assertEquals(List.of("Jonas"), notebooks.find(shared).orElseThrow().owners());
        assertEquals(Optional.empty(), notebooks.right(alone, ada.id()));
    }

    @Test
    void rights_are_given_changed_and_taken_and_the_last_owner_stays() {
        Player ada = joined("Ada");
        Player jonas = joined("Jonas");
        UUID hers = notebookOf(ada);
        assertTrue(notebooks.let(hers, jonas.id(), Right.READ));
        assertEquals(Optional.of(Right.READ), notebooks.right(hers, jonas.id()));
        assertTrue(notebooks.let(hers, jonas.id(), Right.WRITE));
        assertEquals(List.of(new Member(ada, Right.OWN), new Member(jonas, Right.WRITE)), notebooks.members(hers));
        assertThrows(LastOwner.class, () -> notebooks.let(hers, ada.id(), Right.WRITE));
        assertThrows(LastOwner.class, () -> notebooks.remove(hers, ada.id()));
        assertEquals(Optional.of(Right.OWN), notebooks.right(hers, ada.id()), "nothing was changed");
        assertTrue(notebooks.let(hers, jonas.id(), Right.OWN));
        assertTrue(notebooks.remove(hers, ada.id()));
        assertFalse(notebooks.remove(hers, ada.id()));
        assertEquals(Optional.empty(), notebooks.find(hers, ada.id()));
        assertFalse(notebooks.let(hers, UUID.randomUUID(), Right.READ), "no such player");
    }

    @Test
    void two_owners_who_leave_at_once_do_not_both_go() throws Exception {
        Player ada = joined("Ada");
        Player jonas = joined("Jonas");
        for (int round = 0; round < 10; round++) {
            UUID ours = UUID.randomUUID();
            notebooks.add(ours, "Ours", Optional.of(ada.id()), NOW);
            notebooks.let(ours, jonas.id(), Right.OWN);
            List<Callable<Boolean>> both = List.of(() -> leaves(ours, ada), () -> leaves(ours, jonas));
            assertEquals(1, atOnce(both).stream().filter(isGone -> isGone).count(), "round " + round);
            assertEquals(1, notebooks.members(ours).size());
        }
    }

    private boolean leaves(UUID notebook, Player player) {
        try {
            return notebooks.remove(notebook, player.id());
        } catch (LastOwner stays) {
            return false;
        }
    }

    @Test
    void notebooks_are_listed_with_their_owners_to_those_who_may_read_them() {
        Player ada = joined("Ada");
        Player jonas = joined("Jonas");
        UUID hers = notebookOf(ada);
        notebooks.let(hers, jonas.id(), Right.READ);
        notebooks.rename(hers, "Kitchen");
        assertEquals(
                Optional.of(new NotebookEntry(hers, "Kitchen", Right.READ, List.of("Ada"))),
                notebooks.find(hers, jonas.id()));
        assertEquals(2, notebooks.ofPlayer(jonas.id()).size());
        assertEquals(1, notebooks.ofPlayer(ada.id()).size());
        assertEquals(3, notebooks.all().size());
        assertTrue(notebooks.all().stream().allMatch(entry -> entry.may() == Right.OWN));
        assertTrue(notebooks.exists(hers));
        assertFalse(notebooks.exists(UUID.randomUUID()));
    }

    @Test
    void people_stand_in_one_order_whichever_database_sorts_them() {
        List<String> names = List.of("Ann B", "Anna", "Åsa", "Mira", "Zoe");
        for (String name : List.of("Zoe", "Åsa", "Anna", "Ann B")) {
            notebooks.let(FIRST, joined(name).id(), Right.OWN);
        }
        assertEquals(
                names,
                players.players().stream().map(each -> each.name().text()).toList());
        assertEquals(
                names,
                notebooks.members(FIRST).stream()
                        .map(each -> each.player().name().text())
                        .toList());
        assertEquals(names, notebooks.find(FIRST).orElseThrow().owners());
    }

    @Test
    void who_gets_a_passphrase_before_joining_has_a_notebook_of_their_own_and_only_one() {
        String token = token();
        Player ada = invited("Ada", token);
        players.setHash(ada.id(), "set by the command");
        assertEquals("Ada's notebook", notebooks.ofPlayer(ada.id()).get(0).title());
        players.setHash(ada.id(), "another");
        assertTrue(players.join(token, "late", NOW).isEmpty());
        players.inviteAgain(ada.id(), token(), LATER);
        assertEquals(1, notebooks.ofPlayer(ada.id()).size());
        players.setHash(mira.id(), "the keeper's");
        assertEquals(
                List.of(FIRST),
                notebooks.ofPlayer(mira.id()).stream().map(NotebookEntry::id).toList());
    }

    final Database database() {
        return database;
    }

    final DatabaseNotebookStore notebooks() {
        return notebooks;
    }
}
