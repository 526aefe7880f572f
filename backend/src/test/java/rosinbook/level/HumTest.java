package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HumTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({"50, 8000", "50, 44100", "50, 192000", "60, 11025", "60, 48000"})
    void hum_is_found_at_its_frequency_and_level_whichever_mains_it_comes_from(int mains, int rate) throws IOException {
        BowedStrings player = new BowedStrings(mains + rate, rate, "A3", "D3");
        player.humDbfs = -60;
        player.mainsHertz = mains;
        LevelMeasurement found = measure(player, Mains.FIND);
        assertEquals(mains, found.mainsHertz());
        for (InputReport input : found.inputs()) {
            assertTrue(input.humStandsOut());
            assertEquals(mains, input.strongestHumHertz());
            assertEquals(-60, input.humDbfs(), 0.2);
        }
    }

    @Test
    void a_bowed_G2_is_not_taken_for_hum_although_100_hertz_is_35_cents_away() throws IOException {
        BowedStrings player = new BowedStrings(9, 16_000, "D3", "G2");
        LevelMeasurement found = measure(player, Mains.HERTZ_50);
        for (InputReport input : found.inputs()) {
            assertFalse(input.humStandsOut());
            assertTrue(input.humDbfs() < -75, "hum could hide at " + input.humDbfs());
        }
    }

    @Test
    void harmonics_add_up_as_powers() {
        Hum.Listener listener = new Hum.Listener(50, 48_000);
        Random random = new Random(2);
        for (int block = 0; block < 10; block++) {
            float[] samples = new float[9600];
            for (int i = 0; i < samples.length; i++) {
                double turn = 2 * Math.PI * i / 48_000;
                samples[i] = (float) (0.01 * Math.sin(50 * turn)
                        + 0.005 * Math.sin(150 * turn)
                        + 0.02 * Math.sin(950 * turn)
                        + 1e-5 * random.nextGaussian());
            }
            listener.add(samples, samples.length);
        }
        Hum heard = listener.heard();
        assertEquals((0.01 * 0.01 + 0.005 * 0.005 + 0.02 * 0.02) / 2, heard.power(), 1e-7);
        assertEquals(19, heard.strongestHarmonic());
    }

    @Test
    void noise_alone_hums_in_hardly_any_of_many_recordings() {
        Random random = new Random(3);
        int falseAlarms = 0;
        for (int trial = 0; trial < 200; trial++) {
            Hum.Listener listener = new Hum.Listener(50, 8_000);
            for (int block = 0; block < 1 + trial % 4; block++) {
                float[] samples = new float[1600];
                for (int i = 0; i < samples.length; i++) {
                    samples[i] = (float) random.nextGaussian();
                }
                listener.add(samples, samples.length);
            }
            falseAlarms += listener.heard().standsOut() ? 1 : 0;
        }
        // 20 harmonics at 1 in 2000 each give 1 in 100, so about 2 of 200; 8 or more would happen once in 1000 runs.
        assertTrue(falseAlarms < 8, falseAlarms + " of 200");
    }

    private LevelMeasurement measure(BowedStrings player, Mains mains) throws IOException {
        Path file = WavWriter.write(folder.resolve("hum.wav"), player.play(), player.sampleRate);
        return LevelBench.measure(WavRecording.open(file), LevelOptions.usual().withMains(mains), Progress.NONE);
    }
}
