package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PitchTest {
    /** Sawtooth partials on open strings (ISO 16); within 6 cents, since a period of E5 is only 17 samples at 11 kHz. */
    @ParameterizedTest
    @CsvSource({"41.203, 8000", "58.27, 44100", "97.999, 16000", "195.998, 48000", "659.255, 11025", "880, 192000"})
    void the_pitch_of_a_bowed_tone_is_found(double hertz, int rate) {
        float[] samples = new float[Tone.windowFrames(rate)];
        for (int i = 0; i < samples.length; i++) {
            for (int h = 1; h <= 8 && h * hertz < 0.45 * rate; h++) {
                samples[i] += (float) (0.1 / h * Math.sin(2 * Math.PI * h * hertz * i / rate + h));
            }
        }
        Pitch pitch = Pitch.of(samples, rate);
        assertEquals(0, 1200 * Math.log(pitch.hertz() / hertz) / Math.log(2), 6);
        assertTrue(pitch.clarity() > 0.95);
    }

    @Test
    void noise_has_no_clear_pitch() {
        Random random = new Random(1);
        float[] samples = new float[8192];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) random.nextGaussian();
        }
        assertTrue(Pitch.of(samples, 48_000).clarity() < 0.5);
    }

    @Test
    void silence_has_none() {
        assertEquals(0, Pitch.of(new float[8192], 48_000).hertz());
    }
}
