package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Peak and rms against two independent programs, within 0.05 dB, on files of every kind. */
class AstatsIT {
    private static final Pattern FFMPEG_PEAK = Pattern.compile("Peak level dB: (\\S+)");
    private static final Pattern FFMPEG_RMS = Pattern.compile("RMS level dB: (\\S+)");
    private static final int[] RATES = {8_000, 22_050, 44_100, 48_000, 96_000, 192_000};

    @TempDir
    Path folder;

    /** 4 formats × 3 headers × 2 channel counts = 24 files, with rates going round. */
    static Stream<Arguments> files() {
        List<Arguments> files = new ArrayList<>();
        for (SampleFormat format : SampleFormat.values()) {
            for (WavWriter.Header header : WavWriter.Header.values()) {
                for (int channels : new int[] {1 + files.size() % 3, 4 + files.size() % 5}) {
                    files.add(Arguments.of(format, header, channels, RATES[files.size() % RATES.length]));
                }
            }
        }
        return files.stream();
    }

    @ParameterizedTest
    @MethodSource("files")
    void ffmpeg_astats_reads_the_same(SampleFormat format, WavWriter.Header header, int channels, int rate)
            throws IOException, InterruptedException {
        ExternalTool.require("ffmpeg");
        Path file = write(format, header, channels, rate);
        String printed = ExternalTool.run(
                "ffmpeg",
                "-hide_banner",
                "-nostats",
                "-i",
                file.toString(),
                "-af",
                "astats=measure_overall=none",
                "-f",
                "null",
                "-");
        assertSame(file, figures(FFMPEG_PEAK, printed), figures(FFMPEG_RMS, printed));
    }

    @ParameterizedTest
    @MethodSource("files")
    void sox_stats_reads_the_same(SampleFormat format, WavWriter.Header header, int channels, int rate)
            throws IOException, InterruptedException {
        ExternalTool.require("sox");
        // SoX 14.4.2 knows no RF64: it gets the same samples under a classic header.
        Path file = write(format, header == WavWriter.Header.RF64 ? WavWriter.Header.CLASSIC : header, channels, rate);
        String printed = ExternalTool.run("sox", file.toString(), "-n", "stats");
        assertSame(file, soxFigures("Pk lev dB", channels, printed), soxFigures("RMS lev dB", channels, printed));
    }

    private Path write(SampleFormat format, WavWriter.Header header, int channels, int rate) throws IOException {
        Random random = new Random(31 * channels + rate);
        double[][] samples = new double[channels][rate + rate / 7];
        for (int channel = 0; channel < channels; channel++) {
            double level = Math.pow(10, -(3 + 9.0 * channel) / 20);
            for (int i = 0; i < samples[channel].length; i++) {
                samples[channel][i] = level
                        * (0.7 * Math.sin(2 * Math.PI * 196 * i / rate) + 0.3 * (2 * random.nextDouble() - 1) + 0.01);
            }
        }
        return WavWriter.write(folder.resolve("stats.wav"), samples, rate, format, header);
    }

    private static void assertSame(Path file, List<Double> peaks, List<Double> rms) throws IOException {
        WavRecording recording = WavRecording.open(file);
        Envelope envelope = Envelope.of(recording, Progress.NONE);
        assertEquals(recording.inputs(), peaks.size());
        assertEquals(recording.inputs(), rms.size());
        for (int input = 0; input < recording.inputs(); input++) {
            InputTotals totals = envelope.totals(input);
            assertEquals(peaks.get(input), Decibels.ofAmplitude(totals.peak()), 0.05);
            assertEquals(rms.get(input), Decibels.ofPower(totals.meanSquare()), 0.05);
        }
    }

    private static List<Double> figures(Pattern pattern, String printed) {
        List<Double> figures = new ArrayList<>();
        Matcher matcher = pattern.matcher(printed);
        while (matcher.find()) {
            figures.add(Double.parseDouble(matcher.group(1)));
        }
        return figures;
    }

    /** With several channels the first column is all of them together. */
    private static List<Double> soxFigures(String name, int channels, String printed) {
        String line = printed.lines()
                .filter(text -> text.startsWith(name))
                .findFirst()
                .orElseThrow();
        List<Double> figures = Arrays.stream(
                        line.substring(name.length()).strip().split("\\s+"))
                .map(Double::parseDouble)
                .toList();
        return channels == 1 ? figures : figures.subList(1, figures.size());
    }
}
