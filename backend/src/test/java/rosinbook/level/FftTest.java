package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.jtransforms.fft.DoubleFFT_1D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against JTransforms 3.1. */
class FftTest {
    @ParameterizedTest
    @ValueSource(ints = {2, 4, 64, 8192})
    void the_transform_agrees_with_another_library(int size) {
        Random random = new Random(size);
        double[] real = random.doubles(size, -1, 1).toArray();
        double[] imaginary = random.doubles(size, -1, 1).toArray();
        double[] expected = new double[2 * size];
        for (int i = 0; i < size; i++) {
            expected[2 * i] = real[i];
            expected[2 * i + 1] = imaginary[i];
        }
        new DoubleFFT_1D(size).complexForward(expected);
        Fft.of(size).transform(real, imaginary);
        for (int i = 0; i < size; i++) {
            assertEquals(expected[2 * i], real[i], 1e-9);
            assertEquals(expected[2 * i + 1], imaginary[i], 1e-9);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 3, 1000})
    void a_size_that_is_no_power_of_two_is_refused(int size) {
        assertThrows(IllegalArgumentException.class, () -> Fft.of(size));
    }
}
