package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class KeepingRuleTest {
    private static final Instant FIRST = Instant.parse("2026-01-01T03:00:00Z");

    private static Set<Instant> kept(Collection<Instant> made) {
        Set<Instant> kept = new TreeSet<>(made);
        kept.removeAll(KeepingRule.dropped(made));
        return kept;
    }

    /** A backup every day for so many days, tidied each time. */
    private static Set<Instant> afterDays(int days) {
        Set<Instant> there = new TreeSet<>();
        for (int day = 0; day < days; day++) {
            there.add(FIRST.plus(Duration.ofDays(day)));
            there.removeAll(KeepingRule.dropped(there));
        }
        return there;
    }

    private static Set<Instant> at(String... days) {
        return Stream.of(days)
                .map(day -> Instant.parse(day + "T03:00:00Z"))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void a_week_of_days_is_kept_whole() {
        assertEquals(7, afterDays(7).size());
    }

    @Test
    void after_a_year_and_a_half_there_are_days_weeks_and_months() {
        // From a calendar of 2027: the 500th day is Saturday, 15 May; Sundays are 9 May, 2 May, 25 April, 18 April.
        assertEquals(
                at(
                        "2026-06-30",
                        "2026-07-31",
                        "2026-08-31",
                        "2026-09-30",
                        "2026-10-31",
                        "2026-11-30",
                        "2026-12-31",
                        "2027-01-31",
                        "2027-02-28",
                        "2027-03-31",
                        "2027-04-18",
                        "2027-04-25",
                        "2027-04-30",
                        "2027-05-02",
                        "2027-05-09",
                        "2027-05-10",
                        "2027-05-11",
                        "2027-05-12",
                        "2027-05-13",
                        "2027-05-14",
                        "2027-05-15"),
                afterDays(500));
    }

    @Test
    void all_of_one_day_are_kept_within_the_last_days() {
        List<Instant> hourly = IntStream.range(0, 20)
                .mapToObj(hour -> FIRST.plus(Duration.ofHours(hour)))
                .toList();
        assertEquals(new TreeSet<>(hourly), kept(hourly));
    }

    @Test
    void a_clock_that_jumps_ahead_for_a_day_does_not_empty_the_folder() {
        Set<Instant> there = afterDays(40);
        int before = there.size();
        there.add(Instant.parse("2099-01-01T03:00:00Z"));
        assertTrue(kept(there).size() >= before - 1, "at most one day's goes");
    }

    @Provide
    Arbitrary<Set<Instant>> backups() {
        return Arbitraries.longs()
                .between(0, 3 * 366 * 24)
                .map(hour -> FIRST.plus(Duration.ofHours(hour)))
                .set()
                .ofMaxSize(200);
    }

    @Property(seed = "8017")
    void the_newest_is_never_dropped_and_nothing_that_was_not_there_is(@ForAll("backups") Set<Instant> made) {
        Set<Instant> dropped = KeepingRule.dropped(made);
        assertTrue(made.containsAll(dropped));
        assertFalse(!made.isEmpty() && dropped.contains(Collections.max(made)));
    }

    @Property(seed = "8017")
    void tidying_twice_drops_nothing_more_and_the_order_of_asking_does_not_matter(
            @ForAll("backups") Set<Instant> made) {
        Set<Instant> kept = kept(made);
        assertEquals(Set.of(), KeepingRule.dropped(kept));
        assertEquals(new HashSet<>(kept), new HashSet<>(kept(List.copyOf(made))));
    }

    @Property(seed = "8017")
    void no_more_are_kept_than_the_rule_names(@ForAll("backups") Set<Instant> made) {
        long days = kept(made).stream()
                .map(each -> each.toString().substring(0, 10))
                .distinct()
                .count();
        assertTrue(days <= KeepingRule.DAYS + KeepingRule.WEEKS + KeepingRule.MONTHS);
        long daysMade = made.stream()
                .map(each -> each.toString().substring(0, 10))
                .distinct()
                .count();
        assertTrue(days >= Math.min(daysMade, KeepingRule.DAYS));
    }
}
