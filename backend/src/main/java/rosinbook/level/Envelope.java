package rosinbook.level;

import java.io.IOException;

/**
 * A recording in short equal slices of time: per input the mean, the power around that mean, and the largest amplitude of
 * each slice, besides totals over all of it.
 *
 * <p>Slices last 10 ms. When their number would pass {@value #MAX_SLICES} (nearly an hour and a half), neighbours are joined
 * in pairs and slices last twice as long from then on, so that memory stays bounded however long the recording is.
 */
final class Envelope {
    /** The most slices kept. */
    static final int MAX_SLICES = 1 << 19;

    private final int sampleRate;
    private final long frames;
    private final int sliceFrames;
    private final float[][] mean;
    private final float[][] variance;
    private final float[][] peak;
    private final int slices;
    private final InputTotals[] totals;

    Envelope(int sampleRate, long frames, int sliceFrames, int slices, float[][][] statistics, InputTotals[] totals) {
        this.sampleRate = sampleRate;
        this.frames = frames;
        this.sliceFrames = sliceFrames;
        this.slices = slices;
        this.mean = statistics[0];
        this.variance = statistics[1];
        this.peak = statistics[2];
        this.totals = totals;
    }

    /** Reads a recording once, from end to end. */
    static Envelope of(Recording recording, Progress progress) throws IOException {
        return EnvelopeBuilder.read(recording, MAX_SLICES, progress);
    }

    int inputs() {
        return mean.length;
    }

    int sampleRate() {
        return sampleRate;
    }

    /** Samples per input. */
    long frames() {
        return frames;
    }

    /** How many slices there are. */
    int slices() {
        return slices;
    }

    /** Samples in every slice but perhaps the last. */
    int sliceFrames() {
        return sliceFrames;
    }

    InputTotals totals(int input) {
        return totals[input];
    }

    double sliceSeconds() {
        return (double) sliceFrames / sampleRate;
    }

    /** How many slices come closest to this time, at least 1. */
    int slicesIn(double seconds) {
        return (int) Math.max(1, Math.round(seconds / sliceSeconds()));
    }

    /** The slice at a time, between 0 and the number of slices. */
    int sliceAt(double seconds) {
        return (int) Math.max(0, Math.min(slices, Math.round(seconds / sliceSeconds())));
    }

    /** The power of one slice around the mean of the whole recording, so that a constant offset does not count. */
    double power(int input, int slice) {
        double offset = mean[input][slice] - totals[input].mean();
        return variance[input][slice] + offset * offset;
    }

    float peak(int input, int slice) {
        return peak[input][slice];
    }

    /** The largest amplitude in slices {@code from} to before {@code to}; 0 if there are none. */
    double peak(int input, int from, int to) {
        float largest = 0;
        for (int slice = from; slice < to; slice++) {
            largest = Math.max(largest, peak[input][slice]);
        }
        return largest;
    }

    /** The mean of {@link #power} over slices {@code from} to before {@code to}, of which there must be some. */
    double power(int input, int from, int to) {
        double sum = 0;
        for (int slice = from; slice < to; slice++) {
            sum += power(input, slice);
        }
        return sum / (to - from);
    }

    /** {@link #power} of one input, each slice averaged with its neighbours over {@code width} slices. */
    double[] smoothedPower(int input, int width) {
        double[] prefix = new double[slices + 1];
        for (int slice = 0; slice < slices; slice++) {
            prefix[slice + 1] = prefix[slice] + power(input, slice);
        }
        double[] smoothed = new double[slices];
        for (int slice = 0; slice < slices; slice++) {
            int from = Math.max(0, slice - (width - 1) / 2);
            int to = Math.min(slices, slice + width / 2 + 1);
            smoothed[slice] = Math.max(0, prefix[to] - prefix[from]) / (to - from);
        }
        return smoothed;
    }

    /** Whether every sample of the slice was exactly 0. */
    boolean isEmpty(int input, int slice) {
        return peak[input][slice] == 0;
    }
}
