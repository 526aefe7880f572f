package rosinbook.level;

import java.io.IOException;
import java.util.Arrays;

/** Gathers the slices of an {@link Envelope} while a recording is read. */
final class EnvelopeBuilder {
    private static final double SLICE_SECONDS = 0.01;
    private static final int SLICES_PER_BLOCK = 16;

    private final int maxSlices;
    private final float fullScale;
    private final float[][] mean;
    private final float[][] variance;
    private final float[][] peak;
    private final double[] sum;
    private final double[] sumOfSquares;
    private final float[] largest;
    private final long[] clipped;
    /** Base slices joined in each slice kept. */
    private int joined = 1;

    private int baseSlices;

    private EnvelopeBuilder(int inputs, float fullScale, int maxSlices) {
        this.maxSlices = maxSlices;
        this.fullScale = fullScale;
        mean = new float[inputs][1024];
        variance = new float[inputs][1024];
        peak = new float[inputs][1024];
        sum = new double[inputs];
        sumOfSquares = new double[inputs];
        largest = new float[inputs];
        clipped = new long[inputs];
    }

    static Envelope read(Recording recording, int maxSlices, Progress progress) throws IOException {
        int sliceFrames = (int) Math.round(recording.sampleRate() * SLICE_SECONDS);
        EnvelopeBuilder builder =
                new EnvelopeBuilder(recording.inputs(), recording.samples().fullScale(), maxSlices);
        float[][] block = new float[recording.inputs()][SLICES_PER_BLOCK * sliceFrames];
        long done = 0;
        try (SampleStream samples = recording.openAt(0)) {
            for (int read = samples.read(block, block[0].length);
                    read > 0;
                    read = samples.read(block, block[0].length)) {
                for (int from = 0; from < read; from += sliceFrames) {
                    builder.add(block, from, Math.min(from + sliceFrames, read));
                }
                done += read;
                progress.at((double) done / recording.frames());
            }
        }
        return builder.build(recording.sampleRate(), done, sliceFrames);
    }

    private void add(float[][] block, int from, int to) {
        int slot = baseSlices / joined;
        if (slot == maxSlices) {
            joinPairs();
            slot = baseSlices / joined;
        }
        makeRoom(slot);
        int share = baseSlices % joined;
        for (int input = 0; input < block.length; input++) {
            addSlice(input, slot, share, block[input], from, to);
        }
        baseSlices++;
    }

    private void addSlice(int input, int slot, int share, float[] samples, int from, int to) {
        // Four sums side by side, because each addition would otherwise wait for the one before it.
        double sum0 = 0, sum1 = 0, sum2 = 0, sum3 = 0;
        double squares0 = 0, squares1 = 0, squares2 = 0, squares3 = 0;
        float high = 0;
        float low = 0;
        int i = from;
        for (; i + 3 < to; i += 4) {
            float a = samples[i];
            float b = samples[i + 1];
            float c = samples[i + 2];
            float d = samples[i + 3];
            sum0 += a;
            sum1 += b;
            sum2 += c;
            sum3 += d;
            squares0 += (double) a * a;
            squares1 += (double) b * b;
            squares2 += (double) c * c;
            squares3 += (double) d * d;
            high = Math.max(Math.max(Math.max(a, b), Math.max(c, d)), high);
            low = Math.min(Math.min(Math.min(a, b), Math.min(c, d)), low);
        }
        for (; i < to; i++) {
            sum0 += samples[i];
            squares0 += (double) samples[i] * samples[i];
            high = Math.max(high, samples[i]);
            low = Math.min(low, samples[i]);
        }
        double sliceSum = sum0 + sum1 + (sum2 + sum3);
        double sliceSquares = squares0 + squares1 + (squares2 + squares3);
        sum[input] += sliceSum;
        sumOfSquares[input] += sliceSquares;
        float slicePeak = Math.max(high, -low);
        largest[input] = Math.max(largest[input], slicePeak);
        if (slicePeak >= fullScale) {
            clipped[input] += clippedIn(samples, from, to);
        }
        double sliceMean = sliceSum / (to - from);
        double sliceVariance = Math.max(0, sliceSquares / (to - from) - sliceMean * sliceMean);
        join(input, slot, share, sliceMean, sliceVariance, slicePeak);
    }

    private int clippedIn(float[] samples, int from, int to) {
        int count = 0;
        for (int i = from; i < to; i++) {
            if (Math.abs(samples[i]) >= fullScale) {
                count++;
            }
        }
        return count;
    }

    /** Adds one base slice to a slot that already holds {@code share} of them. */
    private void join(int input, int slot, int share, double addedMean, double addedVariance, float addedPeak) {
        if (share == 0) {
            mean[input][slot] = (float) addedMean;
            variance[input][slot] = (float) addedVariance;
            peak[input][slot] = addedPeak;
            return;
        }
        double weight = 1.0 / (share + 1);
        double apart = addedMean - mean[input][slot];
        variance[input][slot] = (float)
                ((1 - weight) * variance[input][slot] + weight * addedVariance + weight * (1 - weight) * apart * apart);
        mean[input][slot] += (float) (weight * apart);
        peak[input][slot] = Math.max(peak[input][slot], addedPeak);
    }

    private void joinPairs() {
        for (int input = 0; input < mean.length; input++) {
            for (int slot = 0; slot < maxSlices; slot++) {
                join(input, slot / 2, slot % 2, mean[input][slot], variance[input][slot], peak[input][slot]);
            }
        }
        joined *= 2;
    }

    private void makeRoom(int slot) {
        if (slot < mean[0].length) {
            return;
        }
        for (float[][] rows : new float[][][] {mean, variance, peak}) {
            for (int input = 0; input < rows.length; input++) {
                rows[input] = Arrays.copyOf(rows[input], Math.min(maxSlices, 2 * rows[input].length));
            }
        }
    }

    private Envelope build(int sampleRate, long frames, int sliceFrames) {
        InputTotals[] totals = new InputTotals[mean.length];
        for (int input = 0; input < totals.length; input++) {
            totals[input] =
                    new InputTotals(sum[input] / frames, sumOfSquares[input] / frames, largest[input], clipped[input]);
        }
        int slices = (baseSlices + joined - 1) / joined;
        return new Envelope(
                sampleRate, frames, sliceFrames * joined, slices, new float[][][] {mean, variance, peak}, totals);
    }
}
