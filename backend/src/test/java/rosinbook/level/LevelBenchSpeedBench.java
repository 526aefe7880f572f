package rosinbook.level;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Five minutes of six inputs, 48 kHz, 24 bit: the reading pass, the whole measurement, and {@code ffmpeg -af astats} on the
 * same file in the same run. Multiple of real time = 300 ÷ seconds. By hand: run {@link #main}.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 3)
@Measurement(iterations = 4, time = 3)
public class LevelBenchSpeedBench {
    private static final int RATE = 48_000;
    private static final int SECONDS = 300;

    private Path file;
    private Recording recording;

    @Setup(Level.Trial)
    public void write() throws IOException {
        file = Files.createTempFile("speed", ".wav");
        double[][] played = new BowedStrings(1, RATE, "E5", "A4", "D4", "G3", "C3", "F2").play();
        BowedStrings silence = new BowedStrings(2, RATE, "E5", "A4", "D4", "G3", "C3", "F2");
        double[][] noise = silence.play();
        double[][] all = new double[6][SECONDS * RATE];
        int quiet = RATE * 4 / 10;
        for (int input = 0; input < 6; input++) {
            System.arraycopy(played[input], 0, all[input], 0, played[input].length);
            for (int i = played[input].length; i < all[input].length; i++) {
                all[input][i] = noise[input][i % quiet];
            }
        }
        WavWriter.write(file, all, RATE);
        recording = WavRecording.open(file);
    }

    @TearDown(Level.Trial)
    public void delete() throws IOException {
        Files.delete(file);
    }

    @Benchmark
    public Object reading_pass() throws IOException {
        return Envelope.of(recording, Progress.NONE);
    }

    @Benchmark
    public LevelMeasurement whole_measurement() throws IOException {
        return LevelBench.measure(recording, LevelOptions.usual(), Progress.NONE);
    }

    @Benchmark
    public String ffmpeg_astats() throws IOException, InterruptedException {
        return ExternalTool.run("ffmpeg", "-v", "error", "-i", file.toString(), "-af", "astats", "-f", "null", "-");
    }

    /** Runs the three side by side. */
    public static void main(String[] args) throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(LevelBenchSpeedBench.class.getSimpleName())
                        .jvmArgs("-Xmx3g")
                        .build())
                .run();
    }
}
