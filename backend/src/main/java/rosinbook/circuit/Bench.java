package rosinbook.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * An adapter on the bench with a meter on it, perhaps with a fault: what would the meter show?
 *
 * <p>Resistance is the voltage a known current would raise; voltage is read by a meter of 10 MΩ, so that a loose pin reads
 * 0 V. Preamps conduct nothing here.
 */
final class Bench {
    private static final double METER_OHMS = 10e6;
    /** What rounding leaves of no current at 1 V, A. */
    private static final double ROUNDING_AMPS = 1e-12;

    private final Wiring wiring;
    private final Layout layout;
    private final List<Piece> pieces;

    /** @param fault {@link Fault#NONE} for an adapter as drawn */
    Bench(Wiring wiring, Map<String, String> positions, Fault fault) {
        this.wiring = wiring;
        layout = Layout.of(wiring, positions);
        pieces = fault.applied(layout.pieces());
    }

    Layout layout() {
        return layout;
    }

    /** Ω between two points of the adapter alone: 0 for a wire, infinite for no connection. */
    double ohms(String from, String to) {
        Nets nets = new Nets(List.of(from, to), pieces);
        if (nets.of(from) == nets.of(to)) {
            return 0;
        }
        Map<String, Double> held = new LinkedHashMap<>();
        held.put(from, 1.0);
        held.put(to, 0.0);
        double amps = new Circuit(nets, pieces, held).ampsOutOf(from);
        return amps > ROUNDING_AMPS ? 1 / amps : Double.POSITIVE_INFINITY;
    }

    /** V against ground at a point with the synth plugged in and on. */
    double volts(String point) {
        List<Piece> all = new ArrayList<>(pieces);
        all.addAll(Insides.ofSynth(wiring, layout.ground()));
        all.add(new Piece("", "meter", point, layout.ground(), METER_OHMS));
        Nets nets = new Nets(List.of(point), all);
        return new Circuit(nets, all, Insides.heldVolts(wiring, layout)).volts(point);
    }

    double reading(MeterStep step) {
        return step.kind() == MeterStep.Kind.VOLTAGE ? volts(step.from()) : ohms(step.from(), step.to());
    }
}
