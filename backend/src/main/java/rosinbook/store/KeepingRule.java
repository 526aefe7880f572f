package rosinbook.store;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.time.temporal.IsoFields;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/**
 * Which backups are kept: all of the last seven days that have one, the newest of each of the last five weeks, and the
 * newest of each of the last twelve months. Days, weeks (ISO 8601) and months are those of UTC. Only those that have a
 * backup count, so neither a long pause nor a clock that was wrong for a while empties the folder.
 */
final class KeepingRule {
    static final int DAYS = 7;
    static final int WEEKS = 5;
    static final int MONTHS = 12;

    private KeepingRule() {}

    /** Those of {@code made} that may go; never the newest. */
    static Set<Instant> dropped(Collection<Instant> made) {
        List<Instant> newestFirst =
                made.stream().distinct().sorted(Comparator.reverseOrder()).toList();
        Set<Instant> dropped = new HashSet<>(newestFirst);
        Set<LocalDate> days = new HashSet<>();
        for (Instant each : newestFirst) {
            LocalDate day = day(each);
            if (days.contains(day) || days.size() < DAYS) {
                days.add(day);
                dropped.remove(each);
            }
        }
        dropped.removeAll(newestOfEach(newestFirst, KeepingRule::week, WEEKS));
        dropped.removeAll(newestOfEach(newestFirst, each -> YearMonth.from(day(each)), MONTHS));
        return dropped;
    }

    private static <T> Set<Instant> newestOfEach(List<Instant> newestFirst, Function<Instant, T> span, int most) {
        Set<T> spans = new HashSet<>();
        Set<Instant> newest = new HashSet<>();
        for (Instant each : newestFirst) {
            if (spans.size() < most && spans.add(span.apply(each))) {
                newest.add(each);
            }
        }
        return newest;
    }

    private static String week(Instant each) {
        LocalDate day = day(each);
        return day.get(IsoFields.WEEK_BASED_YEAR) + "-" + day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR);
    }

    private static LocalDate day(Instant each) {
        return LocalDate.ofInstant(each, ZoneOffset.UTC);
    }
}
