package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class CrosstalkTest {
    @Test
    void noise_within_10_decibels_of_a_leak_is_taken_off_as_power() {
        // Worked example of power correction: −20.0 with noise at −30.0 gives −20.46.
        Crosstalk crosstalk = Crosstalk.of(levels(List.of(-90.0, -30.0), reading(1, 1, 0), reading(1, 2, -20)));
        assertEquals(-20.46, crosstalk.db().get(0).get(1), 0.005);
        assertTrue(crosstalk.aboveNoise().get(0).get(1));
    }

    @Test
    void a_leak_as_loud_as_the_noise_is_marked_as_a_bound_below_it() {
        Crosstalk crosstalk = Crosstalk.of(levels(List.of(-90.0, -30.0), reading(1, 1, 0), reading(1, 2, -30)));
        assertEquals(-39, crosstalk.db().get(0).get(1), 1e-6);
        assertFalse(crosstalk.aboveNoise().get(0).get(1));
    }

    @Test
    void the_mark_turns_at_6_decibels_of_leak_over_noise() {
        double noise = 1e-3;
        for (double over : new double[] {5.99, 6.01}) {
            double leak = noise * Decibels.toPower(over) + noise;
            Crosstalk crosstalk = Crosstalk.of(
                    levels(List.of(-90.0, -30.0), reading(1, 1, 0), reading(1, 2, Decibels.ofPower(leak))));
            assertEquals(over > 6, crosstalk.aboveNoise().get(0).get(1));
        }
    }

    @Test
    void a_string_hears_itself_at_0_and_what_was_not_read_is_null() {
        Crosstalk crosstalk = Crosstalk.of(levels(List.of(), reading(1, 1, -20), reading(1, 2, -50)));
        assertEquals(0, crosstalk.db().get(0).get(0));
        assertEquals(-30, crosstalk.db().get(0).get(1), 1e-9);
        assertNull(crosstalk.db().get(1).get(0));
        assertNull(crosstalk.byLoudness().get(Loudness.SOFT).db().get(0).get(1));
    }

    @Test
    void two_readings_of_the_same_are_averaged_as_powers() {
        // Two independent leaks of −30 add to −26.99 dB; their mean stays −30. With −20: 10·log10((0.01 + 0.001) ÷ 2) =
        // −22.6.
        Crosstalk crosstalk = Crosstalk.of(levels(List.of(), reading(1, 1, 0), reading(1, 2, -30), reading(1, 2, -20)));
        assertEquals(-22.596, crosstalk.db().get(0).get(1), 0.001);
    }

    @Test
    void a_leak_that_grows_faster_than_the_string_shows_by_loudness_and_is_named() {
        Levels levels = new Levels(
                List.of(1, 2),
                2,
                List.of(
                        new LevelReading(1, Loudness.SOFT, 1, -30),
                        new LevelReading(1, Loudness.SOFT, 2, -60),
                        new LevelReading(1, Loudness.LOUD, 1, -10),
                        new LevelReading(1, Loudness.LOUD, 2, -30),
                        new LevelReading(2, Loudness.LOUD, 2, -10)),
                List.of(),
                LevelUnit.METER_DB);
        LevelMeasurement found = LevelBench.fromLevels(levels, LevelOptions.usual());
        assertEquals(
                -30,
                found.crosstalk().byLoudness().get(Loudness.SOFT).db().get(0).get(1),
                1e-9);
        assertEquals(
                -20,
                found.crosstalk().byLoudness().get(Loudness.LOUD).db().get(0).get(1),
                1e-9);
        assertTrue(
                found.notes().get(0).contains("string 1 into input 2 changes by 10.0 dB"),
                found.notes().toString());
    }

    private static LevelReading reading(int string, int input, double decibels) {
        return new LevelReading(string, Loudness.LOUD, input, decibels);
    }

    private static Levels levels(List<Double> noise, LevelReading... readings) {
        return new Levels(List.of(1, 2), 2, List.of(readings), noise, LevelUnit.METER_DB);
    }
}
