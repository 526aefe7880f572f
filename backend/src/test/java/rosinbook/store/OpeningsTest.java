package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

class OpeningsTest {
    private static final Instant NOW = Instant.parse("2026-11-12T20:00:00Z");

    private static final Openings.Key SHARE = new Openings.Key(UUID.randomUUID(), UUID.randomUUID());

    private final List<SortedMap<Openings.Key, Openings.Opened>> written = new ArrayList<>();
    private boolean isAway;

    private void write(SortedMap<Openings.Key, Openings.Opened> openings) {
        if (isAway) {
            throw new IllegalStateException("away");
        }
        synchronized (written) {
            written.add(openings);
        }
    }

    private static void add(Openings openings, Instant when) {
        openings.add(SHARE.notebookId(), SHARE.shareId(), when);
    }

    private int times() {
        synchronized (written) {
            return written.stream()
                    .mapToInt(openings -> openings.get(SHARE).times())
                    .sum();
        }
    }

    @Test
    void many_openings_are_written_together_with_the_last_moment() {
        try (Openings openings = new Openings(this::write)) {
            add(openings, NOW.plusSeconds(2));
            add(openings, NOW);
            openings.write();
        }
        assertEquals(2, times());
        assertEquals(
                NOW.plusSeconds(2), written.get(written.size() - 1).get(SHARE).last());
    }

    /** An interrupt would close the embedded database's file in the middle of a write. */
    @Test
    void closing_waits_for_a_write_under_way_and_does_not_interrupt_it() throws InterruptedException {
        CountDownLatch isWriting = new CountDownLatch(1);
        AtomicReference<String> end = new AtomicReference<>("still writing");
        try (Openings openings = new Openings(taken -> {
            isWriting.countDown();
            try {
                new CountDownLatch(1).await(200, TimeUnit.MILLISECONDS);
                end.set("written");
            } catch (InterruptedException interrupted) {
                end.set("interrupted");
            }
        })) {
            add(openings, NOW);
            assertTrue(isWriting.await(10, TimeUnit.SECONDS));
        }
        assertEquals("written", end.get());
    }

    @Test
    void what_could_not_be_written_is_written_later_and_at_the_end_at_the_latest() {
        try (Openings openings = new Openings(this::write)) {
            isAway = true;
            add(openings, NOW);
            assertThrows(IllegalStateException.class, openings::write);
            isAway = false;
            add(openings, NOW);
        }
        assertEquals(2, times());
    }
}
