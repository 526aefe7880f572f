package rosinbook.take;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A published take played again and again until there are so many notes: analysing and cleaning it. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 2)
@Fork(1)
public class TakeBench {
    /** How many notes. */
    @Param({"10000", "100000", "1000000"})
    public int notes;

    private Take take;

    /** Builds the take. */
    @Setup
    public void repeat() {
        take = repeated(Playing.published("o4_five", "over"), notes);
    }

    /** Finds and mends everything. */
    @Benchmark
    public Object clean() {
        return Cleaner.STANDARD.clean(take);
    }

    static Take repeated(Take once, int notes) {
        long length = 0;
        for (TakeNote note : once.notes()) {
            length = Math.max(length, note.offTick());
        }
        length += 960;
        List<TakeNote> all = new ArrayList<>(notes);
        for (long shift = 0; all.size() < notes; shift += length) {
            for (TakeNote note : once.notes()) {
                long on = note.onTick() + shift;
                long off = note.offTick() + shift;
                all.add(new TakeNote(
                        0,
                        note.string(),
                        note.channel(),
                        note.note(),
                        0,
                        note.velocity(),
                        on,
                        off,
                        Playing.TICKS.seconds(on),
                        Playing.TICKS.seconds(off),
                        false));
            }
        }
        return Playing.take(once.tuning(), all.subList(0, notes));
    }
}
