package rosinbook.take.smf;

import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import javax.sound.midi.MidiSystem;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A file of 100 000 notes, about 800 kB: our reader beside the one of the Java runtime, on the same bytes. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 2)
@Fork(1)
public class MidiFileBench {
    private byte[] bytes;

    /** Writes the file. */
    @Setup
    public void write() {
        Random random = new Random(1);
        MidiTrack.Builder track = new MidiTrack.Builder();
        long tick = 0;
        for (int note = 0; note < 100_000; note++) {
            int channel = random.nextInt(4);
            int key = 55 + random.nextInt(40);
            track.message(tick += random.nextInt(200), 0x90 | channel, key, 1 + random.nextInt(127));
            track.message(tick += random.nextInt(200), 0x80 | channel, key, 64);
        }
        bytes = new MidiFile(0, new Division.Metrical(480), List.of(track.build())).toBytes();
    }

    /** Our reader. */
    @Benchmark
    public Object ours() {
        return MidiFile.parse(bytes);
    }

    /** The reader of the Java runtime. */
    @Benchmark
    public Object javaSound() throws Exception {
        return MidiSystem.getSequence(new ByteArrayInputStream(bytes));
    }
}
