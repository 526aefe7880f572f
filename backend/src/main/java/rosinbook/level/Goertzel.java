package rosinbook.level;

/**
 * The strength of one frequency in a stretch of samples: one bin of a Fourier transform, at any frequency.
 *
 * @see "Goertzel, American Mathematical Monthly 65 (1958)"
 */
final class Goertzel {
    private Goertzel() {}

    /**
     * The mean square of the sine of that frequency. Exact if the stretch holds whole periods; a frequency off by half the
     * bin width (half of rate ÷ count) reads 3.9 dB low.
     *
     * @param hertz above 0, below half the sample rate
     * @return amplitude² ÷ 2
     */
    static double power(float[] samples, int from, int count, double hertz, double sampleRate) {
        double angle = 2 * Math.PI * hertz / sampleRate;
        double twiceCosine = 2 * Math.cos(angle);
        double last = 0;
        double beforeLast = 0;
        for (int i = from; i < from + count; i++) {
            double next = samples[i] + twiceCosine * last - beforeLast;
            beforeLast = last;
            last = next;
        }
        double squaredMagnitude = last * last + beforeLast * beforeLast - twiceCosine * last * beforeLast;
        return 2 * squaredMagnitude / ((double) count * count);
    }
}
