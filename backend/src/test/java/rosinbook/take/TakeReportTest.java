package rosinbook.take;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TakeReportTest {
    @Test
    void counts_add_up() {
        TakeReport report = TakeReport.of(Cleaner.STANDARD.clean(Playing.published("o1_air", "over")));
        assertEquals(462, report.notes().heard());
        assertEquals(
                462, report.perString().stream().mapToInt(StringReport::notes).sum());
        assertEquals(
                report.faults().size(),
                report.perString().stream()
                        .flatMap(string -> string.faults().values().stream())
                        .mapToInt(Integer::intValue)
                        .sum());
        assertEquals(report.notes().kept(), report.after().size());
    }

    @Test
    void the_single_figure_is_what_its_definition_says() {
        Take take = Playing.violin()
                .note(2, "A4", 1, 2, 100)
                .note(3, "A4", 1.06, 1.8, 60)
                .note(1, "E5", 2, 61, 90)
                .take();
        TakeReport report = TakeReport.of(Cleaner.STANDARD.clean(take));
        assertEquals(100.0 * 2 / 3, report.tracking().percent(), 1e-9);
        assertEquals(1, report.tracking().faultsPerMinute(), 1e-9);
        assertEquals(2 / 3.0, report.tracking().cleanShare(), 1e-9);
        assertEquals(Map.of(FaultKind.GHOST, 1), report.perString().get(2).faults());
    }

    @Test
    void ghosts_that_follow_one_string_give_advice_that_names_both_and_is_not_certain() {
        Playing playing = Playing.violin();
        for (int beat = 0; beat < 6; beat++) {
            playing.note(1, "E5", 1 + beat, 1.9 + beat, 100).note(2, "E5", 1.05 + beat, 1.7 + beat, 55);
        }
        TakeReport report = TakeReport.of(Cleaner.STANDARD.clean(playing.take()));
        String advice = report.advice().get(0);
        assertTrue(advice.startsWith("6 of 6 ghosts on string 2 follow notes on string 1."), advice);
        assertTrue(advice.contains("one or two steps may help"), advice);
    }

    @Test
    void a_better_take_has_the_higher_figure() {
        double over = TakeReport.of(Cleaner.STANDARD.clean(Playing.published("o4_five", "over")))
                .tracking()
                .percent();
        double reasonable = TakeReport.of(Cleaner.STANDARD.clean(Playing.published("o4_five", "reasonable")))
                .tracking()
                .percent();
        assertTrue(reasonable > over, reasonable + " against " + over);
    }

    @Test
    void with_a_truth_both_takes_are_scored() {
        Take take = Playing.published("o1_air", "over");
        TakeReport report =
                TakeReport.of(Cleaner.STANDARD.clean(take), Optional.of(Playing.published("o1_air", "truth")));
        assertTrue(report.score().orElseThrow().onset().f1()
                > report.scoreRaw().orElseThrow().onset().f1());
    }
}
