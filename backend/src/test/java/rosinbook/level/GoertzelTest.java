package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.jtransforms.fft.DoubleFFT_1D;
import org.junit.jupiter.api.Test;

/** Against JTransforms 3.1, and a sine of known power. */
class GoertzelTest {
    @Test
    void every_bin_agrees_with_a_fourier_transform_of_the_same_length() {
        int count = 960;
        float[] samples = new float[count];
        double[] transformed = new double[count];
        Random random = new Random(1);
        for (int i = 0; i < count; i++) {
            samples[i] = (float) random.nextGaussian();
            transformed[i] = samples[i];
        }
        new DoubleFFT_1D(count).realForward(transformed);
        for (int bin = 1; bin < count / 2; bin++) {
            double re = transformed[2 * bin];
            double im = transformed[2 * bin + 1];
            double expected = 2 * (re * re + im * im) / ((double) count * count);
            assertEquals(expected, Goertzel.power(samples, 0, count, bin * 50.0, 48_000), 1e-9);
        }
    }

    @Test
    void a_sine_of_whole_periods_reads_half_its_amplitude_squared() {
        float[] samples = new float[9600];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) (0.3 * Math.sin(2 * Math.PI * 50 * i / 48_000 + 1));
        }
        assertEquals(0.045, Goertzel.power(samples, 0, 9600, 50, 48_000), 1e-7);
        assertEquals(0, Goertzel.power(samples, 0, 9600, 100, 48_000), 1e-9);
    }
}
