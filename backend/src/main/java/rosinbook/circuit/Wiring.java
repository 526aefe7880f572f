package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Map;

/**
 * An instrument, a synth and the adapter between them: everything the bench checks, draws and measures.
 *
 * @param instrument the bowed instrument's side
 * @param synth the synth's side
 * @param adapter the routes; empty if left out
 * @param readings what the meter showed, by step of the {@link MeterPlan}; may be empty
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Wiring(InstrumentSide instrument, SynthSide synth, Adapter adapter, Map<String, MeterReading> readings) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public Wiring {
        Require.present("instrument", instrument, "give the instrument's side");
        Require.present("synth", synth, "give the synth's side");
        adapter = adapter == null ? Adapter.of(Map.of()) : adapter;
        readings = Require.keyed("readings", readings, 0, 1000, 80);
    }

    /** A wiring that nobody has measured yet. */
    public static Wiring of(InstrumentSide instrument, SynthSide synth, Adapter adapter) {
        return new Wiring(instrument, synth, adapter, Map.of());
    }

    /** The same two sides with another adapter, not measured yet. */
    public Wiring with(Adapter other) {
        return new Wiring(instrument, synth, other, Map.of());
    }
}
