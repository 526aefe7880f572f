package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DividerSearchTest {
    /** Common practice, no source: a selector line that wants 1.04 V from a 7 V rail. Among pairs near 5.7308 to 1, 47 k over 8.2 k. */
    @Test
    void a_selector_line_of_one_volt_four_gets_the_pair_found_by_hand() throws Exception {
        DividerChoice best = DividerSearch.rank(DividerGoal.of(7, 1.04), 1).get(0);
        assertEquals(47_000, best.upperOhms());
        assertEquals(8_200, best.lowerOhms());
        assertEquals(7 * 8.2 / 55.2, best.volts(), 1e-12);
    }

    /** Common practice, no source: a level line held at 5 V from 7 V; 12 k over 30 k divides by exactly 7 to 5. */
    @Test
    void a_level_line_is_held_at_exactly_five_volts() throws Exception {
        DividerChoice best = DividerSearch.rank(DividerGoal.of(7, 5), 1).get(0);
        assertEquals(5, best.volts(), 1e-12);
        assertTrue(best.milliamps() <= 1);
    }

    /**
     * Against a search written another way: for each lower resistor the error is monotone in the upper one, so conductances
     * are summed and only integer tenths of ohms are used; nothing is shared with the class under test but the tables.
     */
    @ParameterizedTest
    @ValueSource(strings = {"E6", "E12", "E24", "E96"})
    void the_best_pair_is_the_one_an_exhaustive_search_finds(String name) throws Exception {
        Series series = Series.valueOf(name);
        Random random = new Random(63);
        int found = 0;
        for (int round = 0; round < 12; round++) {
            double supply = (random.nextBoolean() ? 1 : -1) * (3 + 12 * random.nextDouble());
            double target = supply * (0.03 + 0.9 * random.nextDouble());
            Double load = random.nextBoolean() ? null : Math.pow(10, 3 + 3 * random.nextDouble());
            double budget = Math.pow(10, -1 + 2 * random.nextDouble());
            double rating = random.nextInt(4) == 0 ? 5 : 250;
            var goal = new DividerGoal(supply, target, load, series, 1.0, 0.0, budget, rating, 1.0);
            double smallest = exhaustiveError(goal);
            try {
                DividerChoice best = DividerSearch.rank(goal, 5).get(0);
                assertEquals(smallest, Math.abs(best.errorVolts()), 1e-9, goal.toString());
                found++;
            } catch (ImpossibleDividerException impossible) {
                double nearest = impossible
                        .nearest()
                        .map(pair -> Math.abs(pair.errorVolts()))
                        .orElse(Double.MAX_VALUE);
                assertEquals(smallest, nearest, 1e-9, goal.toString());
            }
        }
        assertTrue(found >= 6, "only " + found + " goals were possible");
    }

    private static double exhaustiveError(DividerGoal goal) {
        double best = Double.MAX_VALUE;
        for (int upperDecade = 0; upperDecade < 5; upperDecade++) {
            for (int lowerDecade = 0; lowerDecade < 5; lowerDecade++) {
                for (int a : goal.series().decade()) {
                    for (int b : goal.series().decade()) {
                        double upper = a * Math.pow(10, upperDecade) / 10;
                        double lower = b * Math.pow(10, lowerDecade) / 10;
                        double siemens = 1 / upper + 1 / lower + (goal.loadOhms() == null ? 0 : 1 / goal.loadOhms());
                        double volts = goal.supplyVolts() / upper / siemens;
                        double amps = Math.abs(goal.supplyVolts() - volts) / upper;
                        boolean allowed = amps * 1000 <= goal.maxMilliamps()
                                && amps * amps * upper * 1000 <= goal.ratingMilliwatts()
                                && volts * volts / lower * 1000 <= goal.ratingMilliwatts();
                        if (allowed) {
                            best = Math.min(best, Math.abs(volts - goal.targetVolts()));
                        }
                    }
                }
            }
        }
        return best;
    }

    @Test
    void alternatives_are_ranked_by_error_then_by_thevenin_resistance() throws Exception {
        List<DividerChoice> choices = DividerSearch.rank(DividerGoal.of(7, 1.04), 20);
        assertEquals(20, choices.size());
        for (int i = 1; i < choices.size(); i++) {
            double gain = Math.abs(choices.get(i).errorVolts())
                    - Math.abs(choices.get(i - 1).errorVolts());
            assertTrue(gain > -1e-11);
            if (gain < 1e-13) {
                assertTrue(choices.get(i).theveninOhms() >= choices.get(i - 1).theveninOhms());
            }
        }
    }

    @Test
    void a_shorter_list_is_the_beginning_of_a_longer_one() throws Exception {
        var goal = new DividerGoal(7, 2.5, 22_000.0, Series.E96, 1.0, 5.0, 2.0, 250.0, 0.5);
        assertEquals(DividerSearch.rank(goal, 50).subList(0, 3), DividerSearch.rank(goal, 3));
    }

    /** Each row: what is out of reach, and what the sentence must say. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            7  | 8     |       | 1     | 250 | not below the supply of 7 V
            7  | 7     |       | 1     | 250 | not below the supply of 7 V
            7  | 0     |       | 1     | 250 | join the line to ground with a wire
            7  | -1    |       | 1     | 250 | a rail of the other sign
            -7 | -8    |       | 1     | 250 | not below the supply of -7 V
            7  | 1.04  | 100   | 1     | 250 | of which the load takes 10.4 mA; allow more current or buffer the load
            7  | 1.04  |       | 0.001 | 250 | takes at least 0.00654945 mA
            7  | 1.04  | 10    | 1000  | 250 | take resistors of a higher rating
            7  | 6.99999|      | 1     | 250 | too close to the supply
            """)
    void what_cannot_exist_says_why(
            double supply, double target, Double load, double budget, double rating, String sentence) {
        var goal = new DividerGoal(supply, target, load, null, null, null, budget, rating, null);
        var problem = assertThrows(ImpossibleDividerException.class, () -> DividerSearch.rank(goal, 1));
        assertTrue(problem.getMessage().contains(sentence), problem.getMessage());
    }

    @Test
    void what_cannot_exist_names_the_nearest_pair_that_can() {
        var problem = assertThrows(ImpossibleDividerException.class, () -> DividerSearch.rank(DividerGoal.of(7, 8), 1));
        DividerChoice nearest = problem.nearest().orElseThrow();
        assertTrue(nearest.volts() < 7 && nearest.volts() > 6.99, nearest.toString());
        assertTrue(problem.getMessage().contains("gives " + Figures.volts(nearest.volts())), problem.getMessage());
    }

    @ParameterizedTest
    @CsvSource({"NaN, 1", "Infinity, 1", "0, 1", "1e6, 1", "7, NaN"})
    void a_goal_of_no_ordinary_voltage_is_refused(double supply, double target) {
        var problem = assertThrows(IllegalArgumentException.class, () -> DividerGoal.of(supply, target));
        assertTrue(problem.getMessage().matches("(supplyVolts|targetVolts) is .*; give .*"), problem.getMessage());
    }
}
