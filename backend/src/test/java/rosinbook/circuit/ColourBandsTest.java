package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ColourBandsTest {
    /** Worked examples of published colour charts (IEC 60062); the last seven from the chart's columns by hand. */
    @ParameterizedTest
    @CsvSource({
        "1000, 5, brown black red gold",
        "4700, 5, yellow violet red gold",
        "22000, 5, red red orange gold",
        "10, 1, brown black black gold brown",
        "0.47, 5, yellow violet silver gold",
        "1e6, 20, brown black green",
        "680, 10, blue grey brown silver",
        "16900, 1, brown blue white red brown",
        "92000, 0.5, white red black red green",
        "10.1, 0.1, brown black brown gold violet",
        "2.2e9, 5, red red grey gold"
    })
    void rings_are_the_published_ones(double ohms, double tolerance, String rings) {
        assertEquals(List.of(rings.split(" ")), ColourBands.of(ohms, tolerance));
    }

    /** IEC 60062, digits in order 0 to 9, as many charts print them. */
    @Test
    void each_digit_has_its_colour() {
        List<String> published =
                List.of("black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white");
        for (int digit = 1; digit <= 9; digit++) {
            assertEquals(published.get(digit), ColourBands.of(digit * 110, 5).get(0));
            assertEquals(published.get(digit), ColourBands.of(digit * 110, 5).get(1));
        }
        assertEquals(published.get(0), ColourBands.of(100, 5).get(1));
    }

    /** IEC 60062 tolerance ring; grey is left out because charts disagree on it. */
    @ParameterizedTest
    @CsvSource({
        "10, silver",
        "5, gold",
        "2, red",
        "1, brown",
        "0.5, green",
        "0.25, blue",
        "0.1, violet",
        "0.05, orange",
        "0.02, yellow"
    })
    void each_tolerance_has_its_colour(double tolerance, String colour) {
        List<String> rings = ColourBands.of(4700, tolerance);
        assertEquals(colour, rings.get(rings.size() - 1));
    }

    @Test
    void a_tolerance_without_a_colour_leaves_its_ring_out() {
        assertEquals(List.of("yellow", "violet", "black", "brown"), ColourBands.of(4700, 3));
    }

    @Test
    void every_value_of_every_series_reads_back_from_its_rings() {
        List<String> digits =
                List.of("black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white");
        for (Series series : Series.values()) {
            for (double ohms : series.ohms()) {
                List<String> rings = ColourBands.of(ohms, 1);
                int number = 100 * digits.indexOf(rings.get(0))
                        + 10 * digits.indexOf(rings.get(1))
                        + digits.indexOf(rings.get(2));
                double times = rings.get(3).equals("gold") ? 0.1 : Math.pow(10, digits.indexOf(rings.get(3)));
                assertEquals(ohms, number * times, ohms * 1e-12);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"0.09", "1e11", "NaN", "-5"})
    void a_resistance_no_ring_can_say_is_refused(double ohms) {
        var problem = assertThrows(IllegalArgumentException.class, () -> ColourBands.of(ohms, 5));
        assertTrue(problem.getMessage().startsWith("ohms is "), problem.getMessage());
    }
}
