package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LevelComparisonTest {
    @TempDir
    Path folder;

    @Test
    void a_quieter_brighter_route_is_said_to_be_both() throws IOException {
        double[][] played = new BowedStrings(1, 16_000, "A4", "D4").play();
        BowedStrings humming = new BowedStrings(1, 16_000, "A4", "D4");
        humming.humDbfs = -50;
        LevelMeasurement straight = measure(humming.play(), "straight.wav");
        LevelMeasurement preamp = measure(brighter(played), "preamp.wav");
        LevelComparison comparison = LevelComparison.of(straight, "straight", preamp, "preamp");
        LevelComparison.StringDifference first = comparison.strings().get(0);
        assertTrue(first.noiseDb() < -10, "noise " + first.noiseDb());
        assertTrue(first.humDb() < -15, "hum " + first.humDb());
        assertTrue(first.tiltDbPerOctave() > 2, "tilt " + first.tiltDbPerOctave());
        assertTrue(comparison.sentence().contains("preamp hums"), comparison.sentence());
        assertTrue(comparison.sentence().contains("preamp sounds brighter"), comparison.sentence());
    }

    @Test
    void a_measurement_against_itself_has_no_difference_worth_a_word() throws IOException {
        LevelMeasurement same = measure(new BowedStrings(2, 16_000, "A4", "D4").play(), "same.wav");
        LevelComparison comparison = LevelComparison.of(same, "before", same, "after");
        assertEquals(0, comparison.strings().get(1).windowDb());
        assertTrue(comparison.sentence().startsWith("No difference worth a word"), comparison.sentence());
    }

    @Test
    void meter_readings_are_compared_as_far_as_they_go() {
        LevelMeasurement before = meter(-30);
        LevelMeasurement after = meter(-24);
        LevelComparison comparison = LevelComparison.of(before, "before", after, "after");
        assertEquals(6, comparison.strings().get(0).levelDb(), 1e-9);
        assertNull(comparison.strings().get(0).humDb());
        assertTrue(comparison.sentence().contains("after is louder by 6.0 dB"), comparison.sentence());
    }

    private static LevelMeasurement meter(double level) {
        return LevelBench.fromLevels(
                MeterReadings.inDecibels(
                        List.of(
                                new LevelReading(1, Loudness.MEDIUM, 1, level),
                                new LevelReading(2, Loudness.MEDIUM, 2, level)),
                        List.of(1, 2),
                        2,
                        List.of()),
                LevelOptions.usual());
    }

    /** A first difference rises by 6 dB per octave well below half the sample rate. */
    private static double[][] brighter(double[][] inputs) {
        double[][] out = new double[inputs.length][inputs[0].length];
        for (int input = 0; input < inputs.length; input++) {
            for (int i = 1; i < inputs[input].length; i++) {
                out[input][i] = 2 * (inputs[input][i] - 0.9 * inputs[input][i - 1]);
            }
        }
        return out;
    }

    private LevelMeasurement measure(double[][] samples, String name) throws IOException {
        Path file = WavWriter.write(folder.resolve(name), samples, 16_000);
        return LevelBench.measure(
                WavRecording.open(file), LevelOptions.usual().withMains(Mains.HERTZ_50), Progress.NONE);
    }
}
