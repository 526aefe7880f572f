package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SeriesTest {
    /** IEC 60063 in full, see published/preferred-values. Two-digit series are written there without the third digit. */
    @ParameterizedTest
    @EnumSource(names = {"E6", "E12", "E24", "E96", "E192"})
    void each_series_is_the_published_table(Series series) throws IOException {
        int[] published = published(series.name());
        int scale = published[0] == 10 ? 10 : 1;
        assertArrayEquals(Arrays.stream(published).map(value -> value * scale).toArray(), series.decade());
    }

    @Test
    void e48_is_every_second_value_of_e96() throws IOException {
        int[] e96 = published("E96");
        int[] e48 = Series.E48.decade();
        assertEquals(48, e48.length);
        for (int i = 0; i < 48; i++) {
            assertEquals(e96[2 * i], e48[i]);
        }
    }

    @ParameterizedTest
    @EnumSource
    void five_decades_rise_from_ten_ohms_to_below_a_megohm(Series series) {
        double[] ohms = series.ohms();
        assertEquals(5 * series.decade().length, ohms.length);
        assertEquals(10, ohms[0]);
        assertTrue(ohms[ohms.length - 1] < 1e6);
        for (int i = 1; i < ohms.length; i++) {
            assertTrue(ohms[i] > ohms[i - 1]);
        }
    }

    /** README of the open-source Python library eseries, and a circuit editor's help text for 16 834.2 Ω. */
    @ParameterizedTest
    @CsvSource({"E24, 319, 330", "E24, 37726, 39000", "E48, 52e6, 51.1e6", "E96, 16834.2, 16900", "E6, 9.9, 10"})
    void nearest_value_is_the_published_one(Series series, double wanted, double nearest) {
        assertEquals(nearest, series.nearest(wanted), nearest * 1e-12);
    }

    @Property(seed = "60063")
    void nearest_lies_no_further_than_any_value_of_three_decades(
            @ForAll Series series, @ForAll @DoubleRange(min = 100, max = 99_999) double wanted) {
        double distance = Math.abs(series.nearest(wanted) - wanted);
        for (double value : series.ohms()) {
            assertTrue(distance <= Math.abs(value - wanted) * (1 + 1e-12));
        }
    }

    @ParameterizedTest
    @EnumSource
    void every_preferred_value_is_its_own_nearest(Series series) {
        for (double value : series.ohms()) {
            assertEquals(value, series.nearest(value));
        }
    }

    @ParameterizedTest
    @CsvSource({"0", "-1", "NaN", "Infinity"})
    void nearest_of_no_resistance_is_refused(double wanted) {
        var problem = assertThrows(IllegalArgumentException.class, () -> Series.E24.nearest(wanted));
        assertTrue(problem.getMessage().startsWith("wantedOhms is "), problem.getMessage());
    }

    private static int[] published(String name) throws IOException {
        try (var in = SeriesTest.class.getResourceAsStream("/published/preferred-values/" + name + ".txt")) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return Arrays.stream(text.strip().split(" "))
                    .mapToInt(Integer::parseInt)
                    .toArray();
        }
    }
}
