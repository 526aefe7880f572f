package rosinbook.level;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Discrete Fourier transform of a power-of-two length, in place, without scaling: X[k] = Σ x[n]·e^(−2πikn/N).
 *
 * @see "Cooley and Tukey, Mathematics of Computation 19 (1965): radix 2, decimation in time"
 */
final class Fft {
    /** At most one per power of two; never changed once made, so safe for all threads. */
    private static final Map<Integer, Fft> BY_SIZE = new ConcurrentHashMap<>();

    private final int size;
    private final double[] cosine;
    private final double[] sine;

    /** @throws IllegalArgumentException if the size is no power of two */
    static Fft of(int size) {
        if (size < 2 || Integer.bitCount(size) != 1) {
            throw new IllegalArgumentException("a transform of " + size + " points; give a power of two, 2 or more");
        }
        return BY_SIZE.computeIfAbsent(size, Fft::new);
    }

    private Fft(int size) {
        this.size = size;
        cosine = new double[size / 2];
        sine = new double[size / 2];
        for (int k = 0; k < size / 2; k++) {
            cosine[k] = Math.cos(2 * Math.PI * k / size);
            sine[k] = Math.sin(2 * Math.PI * k / size);
        }
    }

    void transform(double[] real, double[] imaginary) {
        reorder(real, imaginary);
        for (int half = 1; half < size; half *= 2) {
            int step = size / (2 * half);
            for (int start = 0; start < size; start += 2 * half) {
                for (int k = 0; k < half; k++) {
                    int a = start + k;
                    int b = a + half;
                    double c = cosine[k * step];
                    double s = sine[k * step];
                    double re = real[b] * c + imaginary[b] * s;
                    double im = imaginary[b] * c - real[b] * s;
                    real[b] = real[a] - re;
                    imaginary[b] = imaginary[a] - im;
                    real[a] += re;
                    imaginary[a] += im;
                }
            }
        }
    }

    private void reorder(double[] real, double[] imaginary) {
        int shift = Integer.numberOfLeadingZeros(size) + 1;
        for (int i = 0; i < size; i++) {
            int j = Integer.reverse(i) >>> shift;
            if (i < j) {
                swap(real, i, j);
                swap(imaginary, i, j);
            }
        }
    }

    private static void swap(double[] values, int i, int j) {
        double kept = values[i];
        values[i] = values[j];
        values[j] = kept;
    }
}
