package rosinbook.circuit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/** Judges meter readings and, for a wrong one, finds which single fault would give it by computing each of them. */
public final class Diagnosis {
    private static final int MAX_SUSPECTS = 6;
    /** What one diagnosis may compute; an ordinary adapter needs a tenth of it. */
    private static final int MAX_PREDICTIONS = 10_000;

    private final Wiring wiring;
    private final Map<String, MeterStep> steps;
    private final Map<String, Map<String, String>> statesByWords = new HashMap<>();
    private final Map<String, List<Fault>> faultsByWords = new HashMap<>();
    private final Map<Fault, Integer> explained = new IdentityHashMap<>();

    private int predictions;

    private Diagnosis(Wiring wiring) {
        this.wiring = wiring;
        steps = MeterPlan.of(wiring).byId();
        SwitchStates.of(wiring.adapter()).forEach(state -> {
            String words = SwitchStates.describe(state);
            statesByWords.put(words, state);
            faultsByWords.put(
                    words, Fault.singles(wiring, Layout.of(wiring, state).pieces()));
        });
    }

    /** One verdict for each reading of the wiring, in the readings' order. */
    public static List<MeterVerdict> of(Wiring wiring) {
        var diagnosis = new Diagnosis(wiring);
        List<MeterVerdict> verdicts = new ArrayList<>();
        wiring.readings().forEach((id, reading) -> verdicts.add(diagnosis.judge(id, reading)));
        return List.copyOf(verdicts);
    }

    private MeterVerdict judge(String id, MeterReading reading) {
        MeterStep step = steps.get(id);
        if (step == null) {
            return new MeterVerdict(
                    id, MeterVerdict.Judgement.MISPLACED, "The adapter has changed; this step is gone.", List.of());
        }
        boolean voltsAsked = step.kind() == MeterStep.Kind.VOLTAGE;
        if (voltsAsked != reading instanceof MeterReading.Volts) {
            return new MeterVerdict(
                    id,
                    MeterVerdict.Judgement.MISPLACED,
                    "This step asks for " + (voltsAsked ? "volts" : "ohms") + "; the reading is " + reading.describe()
                            + ".",
                    List.of());
        }
        double number = number(reading);
        if (number >= step.min() && (step.max() == null || number <= step.max())) {
            return new MeterVerdict(id, MeterVerdict.Judgement.GOOD, "As it should be.", List.of());
        }
        if (step.expected() != null && fits(step, number, step.expected())) {
            return new MeterVerdict(
                    id,
                    MeterVerdict.Judgement.WRONG,
                    "Read " + reading.describe() + ", close to what it should be and yet outside of what the parts'"
                            + " tolerance allows; measure again, then check each resistor's value.",
                    List.of());
        }
        List<String> suspects = suspects(step, number);
        String sentence = "Read " + reading.describe() + ". "
                + (suspects.isEmpty()
                        ? "No single fault was found that gives this; measure again, then look for two faults at once."
                        : "Probably " + suspects.get(0) + ".");
        return new MeterVerdict(id, MeterVerdict.Judgement.WRONG, sentence, suspects);
    }

    private List<String> suspects(MeterStep step, double number) {
        List<Suspect> suspects = new ArrayList<>();
        for (Fault fault : faultsByWords.get(step.switches())) {
            if (fits(step, number, predicted(step, fault))) {
                suspects.add(new Suspect(fault.sentence(), explained.computeIfAbsent(fault, this::explained)));
            }
        }
        suspects.sort(Comparator.comparingInt(Suspect::explained).reversed());
        return suspects.stream().limit(MAX_SUSPECTS).map(Suspect::sentence).toList();
    }

    /** How many of all readings a fault would give. */
    private int explained(Fault fault) {
        int count = 0;
        for (var entry : wiring.readings().entrySet()) {
            MeterStep step = steps.get(entry.getKey());
            boolean comparable = step != null
                    && (step.kind() == MeterStep.Kind.VOLTAGE) == entry.getValue() instanceof MeterReading.Volts;
            if (comparable && fits(step, number(entry.getValue()), predicted(step, fault))) {
                count++;
            }
        }
        return count;
    }

    /** NaN, which fits nothing, once too much has been computed. */
    private double predicted(MeterStep step, Fault fault) {
        if (++predictions > MAX_PREDICTIONS) {
            return Double.NaN;
        }
        return new Bench(wiring, statesByWords.get(step.switches()), fault).reading(step);
    }

    private boolean fits(MeterStep step, double number, double predicted) {
        if (step.kind() == MeterStep.Kind.VOLTAGE) {
            return Math.abs(number - predicted) <= Math.max(0.05, 0.05 * Math.abs(predicted));
        }
        if (predicted >= MeterPlan.OPEN_OHMS) {
            return number >= MeterPlan.OPEN_OHMS;
        }
        double share = wiring.adapter().parts().tolerancePercent() / 100 + 0.03;
        return Math.abs(number - predicted) <= predicted * share + MeterPlan.WIRE_OHMS;
    }

    private static double number(MeterReading reading) {
        if (reading instanceof MeterReading.Volts volts) {
            return volts.volts();
        }
        return reading instanceof MeterReading.Ohms ohms ? ohms.ohms() : Double.POSITIVE_INFINITY;
    }

    private record Suspect(String sentence, int explained) {}
}
