package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EnvelopeTest {
    private static final double SINE = 2 * Math.PI * 997 / 48_000;

    @TempDir
    Path folder;

    @Test
    void a_full_scale_sine_reads_0_by_AES17_and_3_01_below_full_scale_in_plain_rms() throws IOException {
        // AES17: a 997 Hz sine whose peak reaches full scale is 0 dBFS. Plain rms: 1/√2, −3.01 dB. Crest √2 = 3.01 dB.
        InputTotals sine = totals(i -> Math.sin(SINE * i));
        assertEquals(-3.0103, Decibels.ofPower(sine.meanSquare()), 0.001);
        assertEquals(0, Decibels.ofPower(sine.meanSquare()) + Decibels.AES17_OFFSET, 0.001);
        assertEquals(0, Decibels.ofAmplitude(sine.peak()), 0.001);
    }

    @Test
    void a_full_scale_square_reads_0_in_plain_rms_and_3_01_by_AES17() throws IOException {
        InputTotals square = totals(i -> i / 24 % 2 == 0 ? 1 : -1);
        assertEquals(0, Decibels.ofPower(square.meanSquare()), 0.001);
        assertEquals(3.0103, Decibels.ofPower(square.meanSquare()) + Decibels.AES17_OFFSET, 0.001);
    }

    @Test
    void a_triangle_has_a_crest_factor_of_4_77_decibels() throws IOException {
        // Crest factor of a triangle: √3.
        InputTotals triangle = totals(i -> 0.5 * (Math.abs(i % 480 - 240) / 120.0 - 1));
        double crest = Decibels.ofAmplitude(triangle.peak()) - Decibels.ofPower(triangle.meanSquare());
        assertEquals(4.771, crest, 0.005);
        assertEquals(-6.0206, Decibels.ofAmplitude(triangle.peak()), 0.001);
    }

    @Test
    void a_constant_offset_is_told_apart_from_the_sound_on_it() throws IOException {
        Envelope envelope = envelope(i -> 0.25 + 0.1 * Math.sin(SINE * i), Envelope.MAX_SLICES);
        assertEquals(0.25, envelope.totals(0).mean(), 1e-4);
        assertEquals(-23.01, Decibels.ofPower(envelope.power(0, 0, envelope.slices())), 0.01);
    }

    @Test
    void only_samples_at_full_scale_count_as_clipped() throws IOException {
        double just = 8388606.0 / 8388608;
        InputTotals totals = totals(i -> i == 100 ? 1 : i == 200 ? -1 : i == 300 ? -8388607.0 / 8388608 : just);
        assertEquals(3, totals.clippedSamples());
    }

    @Test
    void joined_slices_tell_the_same_as_short_ones() throws IOException {
        Random random = new Random(4);
        double[] samples = random.doubles(100_000, -0.5, 0.6).toArray();
        Recording recording = WavRecording.open(
                WavWriter.write(folder.resolve("joined.wav"), new double[][] {samples, samples}, 48_000));
        Envelope fine = EnvelopeBuilder.read(recording, Envelope.MAX_SLICES, Progress.NONE);
        Envelope coarse = EnvelopeBuilder.read(recording, 64, Progress.NONE);
        assertTrue(coarse.slices() <= 64);
        assertEquals(4, coarse.sliceFrames() / fine.sliceFrames());
        for (int slice = 0; slice + 1 < coarse.slices(); slice++) {
            int from = 4 * slice;
            double power = fine.power(1, from, from + 4);
            assertEquals(power, coarse.power(1, slice), 1e-6);
            assertEquals(fine.peak(1, from, from + 4), coarse.peak(1, slice));
        }
        assertEquals(fine.totals(1).meanSquare(), coarse.totals(1).meanSquare(), 1e-12);
    }

    @Test
    void progress_never_falls_and_ends_at_1() throws IOException {
        List<Double> told = new ArrayList<>();
        Path file = WavWriter.write(folder.resolve("progress.wav"), new double[2][50_000], 8_000);
        EnvelopeBuilder.read(WavRecording.open(file), 1000, told::add);
        assertEquals(told.stream().sorted().toList(), told);
        assertEquals(1, told.get(told.size() - 1));
    }

    private InputTotals totals(IntToDoubleFunction sample) throws IOException {
        return envelope(sample, Envelope.MAX_SLICES).totals(0);
    }

    private Envelope envelope(IntToDoubleFunction sample, int maxSlices) throws IOException {
        double[] samples = new double[48_000];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = sample.applyAsDouble(i);
        }
        Path file = WavWriter.write(folder.resolve("tone.wav"), new double[][] {samples}, 48_000);
        return EnvelopeBuilder.read(WavRecording.open(file), maxSlices, Progress.NONE);
    }
}
