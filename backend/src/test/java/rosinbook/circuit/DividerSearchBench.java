package rosinbook.circuit;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** All E192 pairs over five decades (921 600) with load and budget; the aim is under 20 ms. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class DividerSearchBench {
    private final DividerGoal goal = new DividerGoal(7, 1.04, 100_000.0, Series.E192, 0.5, 5.0, 1.0, 250.0, 0.5);

    /** The eleven best pairs. */
    @Benchmark
    public List<DividerChoice> all_pairs_of_e192() throws ImpossibleDividerException {
        return DividerSearch.rank(goal, 11);
    }
}
