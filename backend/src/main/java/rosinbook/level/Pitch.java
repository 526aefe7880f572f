package rosinbook.level;

/**
 * The pitch of a steady tone.
 *
 * @param hertz the fundamental; 0 if none was found
 * @param clarity how periodic the tone is, 0 to 1; below about 0.8 do not trust the pitch
 */
record Pitch(double hertz, double clarity) {
    private static final Pitch NONE = new Pitch(0, 0);
    private static final double LOWEST_HERTZ = 25;
    private static final double HIGHEST_HERTZ = 4_500;
    private static final double NEARLY_BEST = 0.9;

    /**
     * Normalised autocorrelation; the first peak that comes near the best gives the period, refined by a parabola.
     *
     * @param samples a power of two of them, four periods or more
     * @see "McLeod and Wyvill, A smarter way to find pitch, ICMC 2005"
     */
    static Pitch of(float[] samples, int sampleRate) {
        double[] similarity = similarity(samples);
        int longest = (int) Math.min(samples.length / 2.0, sampleRate / LOWEST_HERTZ);
        int lag = 1;
        while (lag < longest && similarity[lag] > 0) {
            lag++;
        }
        lag = Math.max(lag, (int) (sampleRate / HIGHEST_HERTZ));
        double best = 0;
        for (int i = lag; i < longest; i++) {
            best = Math.max(best, similarity[i]);
        }
        for (int i = Math.max(1, lag); i < longest - 1; i++) {
            boolean isPeak = similarity[i] >= similarity[i - 1] && similarity[i] > similarity[i + 1];
            if (isPeak && similarity[i] >= NEARLY_BEST * best) {
                double offset = vertex(similarity[i - 1], similarity[i], similarity[i + 1]);
                return new Pitch(sampleRate / (i + offset), Math.min(1, similarity[i]));
            }
        }
        return NONE;
    }

    /** How alike the tone is to itself later: 1 for the same, 0 for unrelated, −1 for upside down. */
    private static double[] similarity(float[] samples) {
        int n = samples.length;
        double[] real = new double[2 * n];
        double[] imaginary = new double[2 * n];
        double mean = 0;
        for (float sample : samples) {
            mean += sample / n;
        }
        for (int i = 0; i < n; i++) {
            real[i] = samples[i] - mean;
        }
        double[] squares = new double[n + 1];
        for (int i = 0; i < n; i++) {
            squares[i + 1] = squares[i] + real[i] * real[i];
        }
        Fft fft = Fft.of(2 * n);
        fft.transform(real, imaginary);
        for (int i = 0; i < 2 * n; i++) {
            real[i] = real[i] * real[i] + imaginary[i] * imaginary[i];
            imaginary[i] = 0;
        }
        // A power spectrum is even, so that transforming forward again gives the inverse, times the length.
        fft.transform(real, imaginary);
        double[] similarity = new double[n];
        for (int lag = 0; lag < n; lag++) {
            double energy = squares[n - lag] + squares[n] - squares[lag];
            similarity[lag] = energy > 0 ? 2 * real[lag] / (2 * n) / energy : 0;
        }
        return similarity;
    }

    private static double vertex(double before, double at, double after) {
        double curvature = before - 2 * at + after;
        return curvature == 0 ? 0 : 0.5 * (before - after) / curvature;
    }
}
