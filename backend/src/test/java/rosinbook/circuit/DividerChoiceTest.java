package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DividerChoiceTest {
    /**
     * Textbook dividers. Kuphaldt, Lessons in Electric Circuits I, ch. 6 (45 V; 5 k, 10 k, 7.5 k) and Thevenin chapter;
     * J. Irvine, Electrical Principles, tutorial 8 (12 V, 6 over 4 ohms, 0.8 ohms); a textbook passage (15 V, 10 k / 20
     * k); a formula page (24 V, 1 k / 2 k); Horowitz and Hill, ch. 1 exercise (30 V, from memory); Hambley P2.40 (9 V)
     * and a textbook problem (15 V), answers computed.
     */
    @ParameterizedTest
    @CsvSource({
        "45, 5000, 17500, , 35, 3888.888889",
        "45, 15000, 7500, , 15, 5000",
        "12, 6, 4, , 4.8, 2.4",
        "12, 6, 4, 0.8, 1.2, 2.4",
        "15, 10000, 20000, , 10, 6666.666667",
        "24, 1000, 2000, , 16, 666.666667",
        "30, 10000, 10000, , 15, 5000",
        "30, 10000, 10000, 10000, 10, 5000",
        "9, 400, 500, 1000, 4.090909, 222.222222",
        "15, 50, 25, 200, 4.615385, 16.666667",
        "-24, 1000, 2000, , -16, 666.666667"
    })
    void output_and_thevenin_resistance_are_the_textbooks(
            double supply, double upper, double lower, Double load, double volts, double thevenin) {
        DividerChoice choice = DividerChoice.of(goal(supply, load, 1, 0), upper, lower);
        assertEquals(volts, choice.volts(), 1e-6);
        assertEquals(thevenin, choice.theveninOhms(), 1e-6);
    }

    /** Horowitz and Hill, ch. 1 exercise (from memory): 30 V, three times 10 k: 40, 10 and 10 mW. */
    @Test
    void heat_and_current_of_the_loaded_textbook_divider() {
        DividerChoice choice = DividerChoice.of(goal(30, 10_000.0, 1, 0), 10_000, 10_000);
        assertEquals(40, choice.upperMilliwatts(), 1e-9);
        assertEquals(10, choice.lowerMilliwatts(), 1e-9);
        assertEquals(2, choice.milliamps(), 1e-9);
        assertEquals(0.16, choice.upperRatingShare(), 1e-12);
    }

    /**
     * Rizzoni P2.58 (10 V, 5 k / 5 k; answers computed), a mailing list's worked answer (5 V, 100 k / 30 k, 10 %) and a
     * page's 3.3 V example whose low corner is 1.0854 V.
     */
    @ParameterizedTest
    @CsvSource({
        "10, 5000, 5000, 10, 4.5, 5.5",
        "10, 5000, 5000, 5, 4.75, 5.25",
        "10, 1000, 1000, 1, 4.95, 5.05",
        "5, 100000, 30000, 10, 0.985401, 1.341463",
        "3.3, 20000, 10000, 1, 1.0854, 1.1147"
    })
    void worst_case_over_part_tolerances_is_the_published_one(
            double supply, double upper, double lower, double tolerance, double min, double max) {
        DividerChoice choice = DividerChoice.of(goal(supply, null, tolerance, 0), upper, lower);
        assertEquals(min, choice.minVolts(), 5e-5);
        assertEquals(max, choice.maxVolts(), 5e-5);
    }

    @Test
    void the_rails_tolerance_widens_the_worst_case() {
        DividerChoice choice = DividerChoice.of(goal(10, null, 5, 10), 5000, 5000);
        assertEquals(4.75 * 0.9, choice.minVolts(), 1e-12);
        assertEquals(5.25 * 1.1, choice.maxVolts(), 1e-12);
    }

    @Property(seed = "60063")
    void no_corner_of_the_tolerances_leaves_the_stated_range(
            @ForAll @DoubleRange(min = 10, max = 1e6) double upper,
            @ForAll @DoubleRange(min = 10, max = 1e6) double lower,
            @ForAll @DoubleRange(min = 10, max = 1e6) double load) {
        DividerChoice choice = DividerChoice.of(goal(-7, load, 5, 10), upper, lower);
        for (int corner = 0; corner < 8; corner++) {
            double r1 = upper * ((corner & 1) == 0 ? 0.95 : 1.05);
            double r2 = lower * ((corner & 2) == 0 ? 0.95 : 1.05);
            double rail = -7 * ((corner & 4) == 0 ? 0.9 : 1.1);
            double parallel = 1 / (1 / r2 + 1 / load);
            double volts = rail * parallel / (r1 + parallel);
            assertTrue(volts >= choice.minVolts() - 1e-9 && volts <= choice.maxVolts() + 1e-9);
        }
    }

    private static DividerGoal goal(double supply, Double load, double tolerance, double supplyTolerance) {
        return new DividerGoal(supply, 1, load, Series.E24, tolerance, supplyTolerance, null, 250.0, null);
    }
}
