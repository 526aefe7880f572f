package rosinbook.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class ThrottleTest {
    private static final Instant NOW = Instant.parse("2026-11-12T20:00:00Z");

    private final Throttle throttle = new Throttle();

    private static Throttle.Guesser guesser(String address, String name) {
        return new Throttle.Guesser(address, name);
    }

    private Duration triesFrom(String address, String name, int tries) {
        Duration wait = Duration.ZERO;
        for (int i = 0; i < tries; i++) {
            wait = throttle.begin(guesser(address, name), NOW);
        }
        return wait;
    }

    @Test
    void five_tries_for_a_name_are_free_and_the_next_has_to_wait() {
        assertEquals(Duration.ZERO, triesFrom("1.2.3.4", "ada", 5));
        assertEquals(Duration.ofSeconds(2), triesFrom("1.2.3.4", "ada", 1));
    }

    @Test
    void a_player_is_not_kept_out_by_somebody_who_guesses_elsewhere() {
        triesFrom("6.6.6.6", "ada", 100);
        assertEquals(Duration.ZERO, triesFrom("1.2.3.4", "ada", 1));
    }

    @Test
    void one_address_cannot_try_a_few_times_with_every_name() {
        int tried = 0;
        for (int name = 0; name < 100; name++) {
            tried += triesFrom("6.6.6.6", "player " + name, 1).isZero() ? 1 : 0;
        }
        assertEquals(20, tried);
        assertEquals(Duration.ZERO, triesFrom("1.2.3.4", "player 99", 1));
    }

    @Test
    void signing_in_oneself_buys_no_more_guesses_at_others() {
        int tried = 0;
        for (int round = 0; round < 100; round++) {
            tried += triesFrom("6.6.6.6", "player " + round, 1).isZero() ? 1 : 0;
            if (throttle.begin(guesser("6.6.6.6", "jonas"), NOW).isZero()) {
                throttle.right(guesser("6.6.6.6", "jonas"), NOW);
            }
        }
        assertTrue(tried <= 20, tried + " guesses");
    }

    @Test
    void whoever_signs_in_rightly_is_never_slowed_down() {
        for (int i = 0; i < 200; i++) {
            assertEquals(Duration.ZERO, triesFrom("1.2.3.4", "ada", 1), "sign-in " + i);
            throttle.right(guesser("1.2.3.4", "ada"), NOW);
        }
    }

    @Test
    void many_who_try_at_once_do_not_slip_through() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try {
            for (int round = 0; round < 1_000; round++) {
                Throttle.Guesser guesser = guesser("address " + round, "ada");
                CyclicBarrier start = new CyclicBarrier(8);
                List<Future<Boolean>> tries = new ArrayList<>();
                for (int i = 0; i < 8; i++) {
                    tries.add(threads.submit(() -> {
                        start.await();
                        return throttle.begin(guesser, NOW).isZero();
                    }));
                }
                int tried = 0;
                for (Future<Boolean> each : tries) {
                    tried += each.get() ? 1 : 0;
                }
                assertEquals(5, tried, "round " + round);
            }
        } finally {
            threads.shutdownNow();
        }
    }

    @Property(seed = "8017")
    void waits_grow_to_an_hour_and_end(@ForAll @IntRange(min = 5, max = 60) int wrong) {
        Attempts attempts = new Attempts(5);
        Instant now = NOW;
        Duration before = Duration.ZERO;
        for (int i = 0; i < wrong; i++) {
            attempts.count("x", now);
            Duration wait = attempts.waiting("x", now);
            assertTrue(wait.compareTo(before) >= 0 && wait.compareTo(Duration.ofHours(1)) <= 0, wait + " after " + i);
            before = wait;
            now = now.plus(wait);
            assertTrue(attempts.waiting("x", now).isZero(), "over when it is over");
        }
        assertFalse(before.isZero());
        attempts.count("x", now.plus(Duration.ofHours(2)));
        assertTrue(attempts.waiting("x", now.plus(Duration.ofHours(2))).isZero(), "forgotten after a while");
    }
}
