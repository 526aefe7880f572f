package rosinbook.circuit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * The measurements that show an adapter to be built as drawn, first with nothing plugged in, then with the synth on and
 * the instrument's end still free. Preamps are not measured through.
 *
 * @param steps in order, numbered from 1
 * @param cautions to be read first
 */
public record MeterPlan(List<MeterStep> steps, List<String> cautions) {
    /** Where unplugged measuring stops; nobody measures more. */
    static final int MAX_STEPS = 400;
    /** Readings below this are a wire, Ω: probes and plugs have some resistance (common practice, no source). */
    static final double WIRE_OHMS = 2;
    /** Readings above this are no connection, Ω (common practice, no source). */
    static final double OPEN_OHMS = 10e6;

    /** Copies the lists. */
    public MeterPlan {
        steps = List.copyOf(steps);
        cautions = List.copyOf(cautions);
    }

    /** The plan for an adapter, in every setting of its switches; a step that repeats another is left out. */
    public static MeterPlan of(Wiring wiring) {
        Map<String, MeterStep> steps = new LinkedHashMap<>();
        List<Map<String, String>> states = SwitchStates.of(wiring.adapter());
        for (MeterStep.Phase phase : MeterStep.Phase.values()) {
            for (Map<String, String> state : states) {
                if (phase == MeterStep.Phase.UNPLUGGED && steps.size() >= MAX_STEPS) {
                    break;
                }
                for (MeterStep step : new MeterPlanWriter(wiring, state).steps(phase)) {
                    boolean repeated = steps.values().stream()
                            .anyMatch(other -> other.from().equals(step.from())
                                    && other.to().equals(step.to())
                                    && other.kind() == step.kind()
                                    && Objects.equals(other.expected(), step.expected()));
                    if (!repeated) {
                        steps.put(step.id(), step.numbered(steps.size() + 1));
                    }
                }
            }
        }
        return new MeterPlan(List.copyOf(steps.values()), Cautions.BEFORE_SOLDERING);
    }

    /** The steps, to find one by its id. */
    Map<String, MeterStep> byId() {
        Map<String, MeterStep> byId = new LinkedHashMap<>();
        steps.forEach(step -> byId.put(step.id(), step));
        return byId;
    }
}
