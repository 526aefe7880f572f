package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class SensitivityAdviceTest {
    private static final SensitivityScale ASSUMED = SensitivityScale.assumed(0, 100, 1, 1.5, 20);

    @Test
    void a_string_quieter_than_the_trigger_by_three_steps_is_set_three_steps_higher() {
        SensitivityAdvice advice = advise(window(-36, -45), ASSUMED, OptionalDouble.of(-36), Map.of(1, -12.0));
        // Middle of the window −40.5, trigger −36: 4.5 dB are missing, 1.5 dB a step.
        assertEquals(23, advice.setting(), 1e-9);
        assertEquals(3, advice.change(), 1e-9);
        assertEquals(4.5, advice.catchMarginDb(), 1e-9);
        assertEquals(4.5, advice.ignoreMarginDb(), 1e-9);
        assertEquals(12 - 4.5, advice.headroomDb(), 1e-9);
    }

    @Test
    void on_a_scale_that_runs_the_other_way_it_is_set_lower() {
        SensitivityScale inverted = SensitivityScale.assumed(0, 100, 1, -1.5, 20);
        assertEquals(
                17,
                advise(window(-36, -45), inverted, OptionalDouble.of(-36), Map.of())
                        .setting(),
                1e-9);
    }

    @Test
    void without_a_measured_trigger_the_customary_start_suits_the_middle_string_and_is_marked_assumed() {
        List<SensitivityAdvice> advice = SensitivityAdvice.of(
                List.of(window(1, -30, -40), window(2, -33, -43), window(3, -36, -46)),
                ASSUMED,
                OptionalDouble.empty(),
                Map.of());
        assertEquals(
                List.of(18.0, 20.0, 22.0),
                advice.stream().map(SensitivityAdvice::setting).toList());
        assertTrue(advice.get(0).isAssumed());
        assertTrue(
                advice.get(0).sentence().contains("Partly assumed"),
                advice.get(0).sentence());
        assertNull(advice.get(0).headroomDb());
    }

    @Test
    void a_measured_scale_and_a_measured_trigger_are_not_marked() {
        SensitivityScale measured = SensitivityScale.measured(
                0, 100, 1, List.of(new LineFit.Point(10, -50), new LineFit.Point(20, -40)), 20);
        assertEquals(1, measured.decibelsPerStep(), 1e-9);
        assertEquals(1, measured.fit().orElseThrow().rSquared(), 1e-9);
        assertFalse(advise(window(-36, -45), measured, OptionalDouble.of(-36), Map.of())
                .isAssumed());
    }

    @Test
    void beyond_the_end_of_the_scale_the_end_is_advised_and_said_to_be_the_end() {
        SensitivityScale small = SensitivityScale.assumed(1, 9, 1, 1, 5);
        SensitivityAdvice advice = advise(window(-46, -55), small, OptionalDouble.of(-36), Map.of());
        assertEquals(9, advice.setting());
        assertTrue(advice.isAtEnd());
        assertTrue(advice.catchMarginDb() < 0);
    }

    @Test
    void little_headroom_is_said() {
        SensitivityAdvice advice = advise(window(-36, -45), ASSUMED, OptionalDouble.of(-36), Map.of(1, -5.0));
        assertTrue(advice.sentence().contains("within 0.5 dB of clipping"), advice.sentence());
    }

    @Test
    void a_string_without_a_window_gets_a_compromise_and_is_told_so() {
        SensitivityAdvice advice = advise(window(-36, -34), ASSUMED, OptionalDouble.of(-35), Map.of());
        assertEquals(-1, advice.catchMarginDb(), 1e-9);
        assertEquals(-1, advice.ignoreMarginDb(), 1e-9);
        assertTrue(advice.sentence().contains("compromise"), advice.sentence());
    }

    @Property(tries = 300, seed = "43")
    void inside_the_scale_both_margins_differ_by_no_more_than_a_step(
            @ForAll @DoubleRange(min = -45, max = -25) double softest,
            @ForAll @DoubleRange(min = -70, max = -46) double leak,
            @ForAll @DoubleRange(min = 0.2, max = 3) double stepDb) {
        SensitivityScale wide = SensitivityScale.assumed(-1000, 1000, 1, stepDb, 0);
        SensitivityAdvice advice = advise(window(softest, leak), wide, OptionalDouble.of(-40), Map.of());
        assertEquals(advice.catchMarginDb(), advice.ignoreMarginDb(), stepDb + 1e-9);
        assertEquals(softest - leak, advice.catchMarginDb() + advice.ignoreMarginDb(), 1e-9);
    }

    @Test
    void a_scale_that_cannot_be_is_refused_in_words() {
        assertRefused("lowest must lie below", () -> SensitivityScale.assumed(9, 9, 1, 1, 9));
        assertRefused("steps of 0.0", () -> SensitivityScale.assumed(0, 9, 0, 1, 5));
        assertRefused("step of 0.0 dB", () -> SensitivityScale.assumed(0, 9, 1, 0, 5));
        assertRefused("step of NaN dB", () -> SensitivityScale.assumed(0, 9, 1, Double.NaN, 5));
        assertRefused("customary start 10.0", () -> SensitivityScale.assumed(0, 9, 1, 1, 10));
    }

    private static void assertRefused(String message, Executable act) {
        var problem = assertThrows(IllegalArgumentException.class, act);
        assertTrue(problem.getMessage().contains(message), problem.getMessage());
    }

    private static SensitivityAdvice advise(
            TriggerWindow window, SensitivityScale scale, OptionalDouble threshold, Map<Integer, Double> peaks) {
        return SensitivityAdvice.of(List.of(window), scale, threshold, peaks).get(0);
    }

    private static TriggerWindow window(double softest, double leak) {
        return window(1, softest, leak);
    }

    private static TriggerWindow window(int string, double softest, double leak) {
        return TriggerWindow.between(string, softest, new TriggerWindow.Ignored(Decibels.toPower(leak), 9), 3);
    }
}
