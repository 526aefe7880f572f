package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Reference;
import rosinbook.share.Share;

/** What keeping shares means, on whichever database. */
abstract class ShareStoreContract {
    private static final Instant NOW = Instant.parse("2026-11-12T20:00:00.123456Z");

    private final UUID recipe = UUID.randomUUID();
    private Database database;
    private DatabaseShareStore shares;

    /** A fresh, empty database. */
    abstract Database fresh();

    @BeforeEach
    void open() {
        database = fresh();
        Clock clock = Clock.fixed(NOW, ZoneOffset.UTC);
        Notebook notebook = new Notebook(DatabaseSheetStore.onlyNotebook(database, NOW), clock);
        notebook.create(
                Kind.RECIPES,
                recipe,
                ContentJson.parse("{\"title\":\"Everyday\",\"settings\":{}}".getBytes(StandardCharsets.UTF_8)),
                new Notebook.Note("", ""),
                Optional.empty());
        shares = new DatabaseShareStore(database, DatabaseSheetStore.ONLY_NOTEBOOK);
    }

    @AfterEach
    void close() {
        if (database != null) {
            database.close();
        }
    }

    private Share share(Optional<Instant> expiresAt) {
        return new Share(
                UUID.randomUUID(),
                "For Jonas",
                Kind.RECIPES,
                recipe,
                Optional.of(1),
                NOW,
                expiresAt,
                Optional.empty(),
                Optional.empty(),
                0);
    }

    @Test
    void a_share_is_found_by_its_token_alone_and_shows_what_it_names() {
        Share made = share(Optional.of(NOW.plus(Duration.ofDays(7))));
        shares.add(made, "a".repeat(64), Set.of(new Reference(recipe, 1)));
        assertEquals(
                Optional.of(new DatabaseShareStore.Found(DatabaseSheetStore.ONLY_NOTEBOOK, made)),
                DatabaseShareStore.byToken(database, "a".repeat(64)));
        assertEquals(Optional.empty(), DatabaseShareStore.byToken(database, "b".repeat(64)));
        assertEquals(Set.of(new Reference(recipe, 1)), shares.shown(made.id()));
        assertEquals(Share.State.OPEN, made.state(NOW.plus(Duration.ofDays(6))));
        assertEquals(Share.State.EXPIRED, made.state(NOW.plus(Duration.ofDays(7))));
    }

    @Test
    void opening_is_counted_and_closing_is_for_good() {
        Share made = share(Optional.empty());
        shares.add(made, "a".repeat(64), Set.of());
        shares.opened(made.id(), NOW.plusSeconds(5));
        shares.opened(made.id(), NOW.plusSeconds(9));
        assertTrue(shares.revoke(made.id(), NOW.plusSeconds(10)));
        assertTrue(shares.revoke(made.id(), NOW.plusSeconds(20)), "closing twice changes nothing");
        Share listed = shares.list().get(0);
        assertEquals(2, listed.opened());
        assertEquals(Optional.of(NOW.plusSeconds(9)), listed.lastOpenedAt());
        assertEquals(Optional.of(NOW.plusSeconds(10)), listed.revokedAt());
        assertFalse(shares.revoke(UUID.randomUUID(), NOW));
    }

    @Test
    void shares_are_listed_where_their_openings_cannot_be_written_down_and_these_follow_later() {
        Share made = share(Optional.empty());
        shares.add(made, "a".repeat(64), Set.of());
        shares.opened(made.id(), NOW.plusSeconds(5));
        Damage.execute(database, "ALTER TABLE share ADD CONSTRAINT share_is_full CHECK (opened_count < 1)");
        assertEquals(List.of(made), shares.list());
        Damage.execute(database, "ALTER TABLE share DROP CONSTRAINT share_is_full");
        assertEquals(1, shares.list().get(0).opened());
    }

    @Test
    void shares_are_listed_while_something_else_is_being_written() throws Exception {
        Share made = share(Optional.empty());
        shares.add(made, "a".repeat(64), Set.of());
        shares.opened(made.id(), NOW.plusSeconds(5));
        CountDownLatch writing = new CountDownLatch(1);
        CountDownLatch listed = new CountDownLatch(1);
        CompletableFuture<Boolean> wasListed = CompletableFuture.supplyAsync(() -> database.change(sql -> {
            writing.countDown();
            return awaited(listed);
        }));
        assertTrue(awaited(writing));
        shares.list();
        listed.countDown();
        assertTrue(wasListed.get(), "nobody waits for its end");
    }

    private static boolean awaited(CountDownLatch latch) {
        try {
            return latch.await(8, TimeUnit.SECONDS);
        } catch (InterruptedException interrupted) {
            throw new IllegalStateException(interrupted);
        }
    }

    @Test
    void shares_are_listed_newest_first() {
        Share older = share(Optional.empty());
        shares.add(older, "a".repeat(64), Set.of());
        Share newer = new Share(
                UUID.randomUUID(),
                "",
                Kind.RECIPES,
                recipe,
                Optional.empty(),
                NOW.plusSeconds(1),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                0);
        shares.add(newer, "b".repeat(64), Set.of());
        assertEquals(List.of(newer, older), shares.list());
    }
}
