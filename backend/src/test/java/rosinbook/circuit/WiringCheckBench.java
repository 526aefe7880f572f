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

/** The full check of an adapter to a 13-pin synth; the aim is under 1 ms. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class WiringCheckBench {
    private final Wiring wiring = SampleWiring.good().wiring();

    /** Every rule, control voltages with worst cases, rails and strings. */
    @Benchmark
    public CheckReport check_of_thirteen_pins() {
        return WiringCheck.of(wiring);
    }

    /** The drawing of both connectors and ten routes. */
    @Benchmark
    public String drawing_of_thirteen_pins() {
        return Drawing.of(wiring, Side.MATING, List.of());
    }
}
