package rosinbook.level;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What one stroke sounds like on the input that hears it best.
 *
 * @param pitch its pitch
 * @param tiltDbPerOctave how fast its spectrum falls (negative) from its fundamental up; empty if fewer than two octave
 *     bands stand out of the noise
 */
record Tone(Pitch pitch, OptionalDouble tiltDbPerOctave) {
    private static final double WINDOW_SECONDS = 0.15;
    private static final double HIGHEST_HERTZ = 10_000;

    /** How many samples are listened to: the power of two next above 0.15 s. */
    static int windowFrames(int sampleRate) {
        return Integer.highestOneBit((int) (WINDOW_SECONDS * sampleRate)) * 2;
    }

    /**
     * @param samples {@link #windowFrames} of them
     * @param noisePower taken as spread evenly over the spectrum
     */
    static Tone of(float[] samples, int sampleRate, double noisePower) {
        Pitch pitch = Pitch.of(samples, sampleRate);
        return new Tone(
                pitch,
                pitch.hertz() > 0 ? tilt(samples, sampleRate, pitch.hertz(), noisePower) : OptionalDouble.empty());
    }

    private static OptionalDouble tilt(float[] samples, int sampleRate, double fundamental, double noisePower) {
        double[] spectrum = powerSpectrum(samples);
        double binHertz = (double) sampleRate / samples.length;
        List<LineFit.Point> bands = new ArrayList<>();
        double low = fundamental / Math.sqrt(2);
        for (int octave = 0; 2 * low <= Math.min(HIGHEST_HERTZ, 0.45 * sampleRate); octave++, low *= 2) {
            double power = 0;
            for (int bin = (int) Math.ceil(low / binHertz); bin < 2 * low / binHertz; bin++) {
                power += spectrum[bin];
            }
            double noise = noisePower * low / (sampleRate / 2.0);
            if (power >= 4 * noise) {
                bands.add(new LineFit.Point(octave, Decibels.ofPower(power)));
            }
        }
        return bands.size() < 2
                ? OptionalDouble.empty()
                : OptionalDouble.of(LineFit.of(bands).slope());
    }

    /** One-sided, through a Hann window, so scaled that all bins add up to the mean square. */
    private static double[] powerSpectrum(float[] samples) {
        int n = samples.length;
        double[] real = new double[n];
        double[] imaginary = new double[n];
        for (int i = 0; i < n; i++) {
            real[i] = samples[i] * (0.5 - 0.5 * Math.cos(2 * Math.PI * i / n));
        }
        Fft.of(n).transform(real, imaginary);
        double[] power = new double[n / 2];
        double windowPower = 3.0 / 8.0 * n * n;
        for (int bin = 0; bin < n / 2; bin++) {
            power[bin] = 2 * (real[bin] * real[bin] + imaginary[bin] * imaginary[bin]) / windowPower;
        }
        return power;
    }
}
