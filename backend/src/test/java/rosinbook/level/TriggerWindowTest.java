package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class TriggerWindowTest {
    @Test
    void a_window_goes_from_the_loudest_leak_plus_the_margin_to_the_softest_stroke_less_it() {
        TriggerWindow window = window(-30, -45, List.of(), 3);
        assertEquals(-42, window.lowDbfs(), 1e-9);
        assertEquals(-33, window.highDbfs(), 1e-9);
        assertEquals(9, window.widthDb(), 1e-9);
        assertEquals(2, window.leakFromString());
        assertNull(window.advice());
    }

    @Test
    void a_window_opens_just_above_the_sum_of_both_margins() {
        assertTrue(!window(-30, -35.99, List.of(), 3).isOpen());
        assertTrue(!window(-30, -36, List.of(), 3).isOpen());
        assertTrue(window(-30, -36.01, List.of(), 3).isOpen());
    }

    @Test
    void a_string_without_a_window_is_told_its_worst_leak_and_what_usually_helps() {
        TriggerWindow window = window(-30, -31, List.of(), 3);
        assertTrue(window.advice()
                .startsWith("String 1 has no window: its softest stroke is -30.0 dB, and string 2 reaches -31.0 dB"));
        assertTrue(window.advice().contains("lower the trim of string 2"));
    }

    @Test
    void noise_louder_than_any_leak_sets_the_lower_end_and_gets_its_own_advice() {
        TriggerWindow window = window(-30, -60, List.of(-32.0, -80.0), 3);
        assertEquals(-29, window.lowDbfs(), 1e-9);
        assertEquals(0, window.leakFromString());
        assertTrue(window.advice().contains("find the hum or hiss first"), window.advice());
    }

    private static TriggerWindow window(double softest, double leak, List<Double> noise, double margin) {
        List<LevelReading> readings = new ArrayList<>();
        readings.add(new LevelReading(1, Loudness.SOFT, 1, softest));
        readings.add(new LevelReading(1, Loudness.LOUD, 1, softest + 12));
        readings.add(new LevelReading(2, Loudness.LOUD, 1, leak));
        readings.add(new LevelReading(2, Loudness.SOFT, 1, leak - 12));
        return TriggerWindow.of(new Levels(List.of(1, 2), 2, readings, noise, LevelUnit.METER_DB), margin)
                .get(0);
    }
}
