package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PiezoSourceTest {
    /** Piezo Film Sensors Technical Manual, "Frequency Response": 2.4 nF into 10 and 100 megohms, 6.6 and 0.66 Hz. */
    @ParameterizedTest
    @CsvSource({"2.4e-9, 10e6, 6.631", "2.4e-9, 100e6, 0.6631"})
    void corner_is_that_of_the_piezo_film_manual(double farads, double ohms, double hertz) {
        assertEquals(hertz, new PiezoSource(farads, 0, ohms).cornerHertz(), hertz * 1e-3);
    }

    /** Textbook problem: 100 pF and 300 pF of cable and 50 pF into 1 megohm, 5 % amplitude error from 1076 Hz up. */
    @Test
    void five_percent_are_lost_at_the_textbooks_frequency() {
        var source = new PiezoSource(100e-12, 350e-12, 1e6);
        assertEquals(20 * Math.log10(0.95), source.cornerDecibels(1076), 1e-3);
    }

    /** f = 1/(2 pi R C) worked out for open strings (G3, C2), and a 300 pF cable on 500 pF. */
    @ParameterizedTest
    @CsvSource({"500e-12, 1e6, 195.998, -5.61", "1000e-12, 1e6, 195.998, -2.20", "1000e-12, 1e6, 65.406, -8.40"})
    void an_open_string_loses_what_the_corner_says(double farads, double ohms, double hertz, double decibels) {
        assertEquals(decibels, new PiezoSource(farads, 0, ohms).cornerDecibels(hertz), 0.006);
    }

    @Test
    void a_cable_lowers_level_and_corner_together() {
        var source = new PiezoSource(500e-12, 300e-12, 1e6);
        assertEquals(-4.08, source.cableDecibels(), 0.005);
        assertEquals(199, source.cornerHertz(), 0.1);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0, 1e6, sourceFarads",
        "NaN, 0, 1e6, sourceFarads",
        "1e-9, -1, 1e6, cableFarads",
        "1e-9, 0, 0, inputOhms"
    })
    void impossible_parts_are_refused(double source, double cable, double ohms, String field) {
        var problem = assertThrows(IllegalArgumentException.class, () -> new PiezoSource(source, cable, ohms));
        assertTrue(problem.getMessage().startsWith(field + " is "), problem.getMessage());
    }

    @Test
    void low_strings_want_a_preamp_first_and_a_preamps_input_mends_it() {
        List<StringOutlook> straight =
                WiringCheck.of(SampleWiring.good().wiring()).strings();
        assertFalse(straight.get(0).wantsPreamp());
        assertTrue(straight.get(3).wantsPreamp(), straight.get(3).sentence());
        assertEquals(-5.61, straight.get(3).cornerDecibels(), 0.006);
        var preamp = new Via.Preamp(0, 0.5, 10e6, "2", null);
        StringOutlook mended = WiringCheck.of(
                        SampleWiring.good().route("string-4", "2", "8", preamp).wiring())
                .strings()
                .get(3);
        assertEquals(10e6, mended.inputOhms());
        assertFalse(mended.wantsPreamp());
    }
}
