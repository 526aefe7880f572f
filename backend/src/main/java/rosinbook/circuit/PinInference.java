package rosinbook.circuit;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** Reads one pin's row of a probe table. All thresholds are common practice, no source. */
final class PinInference {
    /** A rail has at least this, V. */
    static final double RAIL_VOLTS = 1;
    /** A signal rises this far above silence, times. */
    static final double RISE = 3;
    /** Below this nothing counts as a signal, mV. */
    static final double FLOOR_MILLIVOLTS = 1;
    /** One string stands out from the others by this, times. */
    static final double STANDS_OUT = 3;
    /** Strings of a mixed signal differ by no more than this, times. */
    static final double MIXED_SPREAD = 4;

    private final String label;
    private final PinProbe probe;
    private final ProbeTable table;

    private PinInference(String label, PinProbe probe, ProbeTable table) {
        this.label = label;
        this.probe = probe;
        this.table = table;
    }

    static PinGuess of(String label, ProbeTable table) {
        return new PinInference(label, table.pins().get(label), table).guess();
    }

    private PinGuess guess() {
        double[] steady = probe.steadyVolts();
        double highest = Arrays.stream(steady).map(Math::abs).max().orElse(0);
        if (highest >= RAIL_VOLTS) {
            return rail(steady, highest);
        }
        if (probe.isShorted()) {
            return ground(steady);
        }
        Map<Integer, Double> millivolts = probe.bowedMillivolts();
        if (millivolts.isEmpty()) {
            return new PinGuess(
                    new PinRole.Unknown(),
                    0,
                    "No string has been bowed with the meter on pin " + label + ".",
                    nextString().isPresent() ? bow(nextString().getAsInt()) : "");
        }
        return signal(millivolts);
    }

    private PinGuess rail(double[] steady, double highest) {
        double lowest = Arrays.stream(steady).min().orElseThrow();
        double top = Arrays.stream(steady).max().orElseThrow();
        if (top - lowest > 0.2 * highest) {
            return new PinGuess(
                    new PinRole.Unknown(),
                    0.3,
                    "Its steady voltage wanders from " + Figures.volts(lowest) + " to " + Figures.volts(top)
                            + ", which neither a rail nor a signal does; it may be a control.",
                    "Measure pin " + label + " in V DC twice with nothing played, once after turning each knob.");
        }
        double mean = Math.round(10 * Arrays.stream(steady).average().orElseThrow()) / 10.0;
        double confidence = (steady.length > 1 ? 0.9 : 0.75) - (probe.toGround() == null ? 0.1 : 0);
        return new PinGuess(
                PinRole.Supply.of(mean),
                confidence,
                "It holds a steady " + Figures.volts(mean) + ", whatever is played.",
                steady.length > 1 ? "" : "Measure pin " + label + " in V DC once more while a string is bowed.");
    }

    private PinGuess ground(double[] steady) {
        String dc = steady.length > 0 ? " and shows no steady voltage" : "";
        return new PinGuess(
                new PinRole.Ground(),
                steady.length > 0 ? 0.95 : 0.85,
                "It measures " + probe.toGround().describe() + " to ground with everything off" + dc + ".",
                steady.length > 0 ? "" : "Measure pin " + label + " in V DC: ground shows 0 V.");
    }

    private PinGuess signal(Map<Integer, Double> millivolts) {
        double floor =
                Math.max(FLOOR_MILLIVOLTS, RISE * probe.silentMillivolts().orElse(0.0));
        List<Integer> risen = millivolts.keySet().stream()
                .filter(string -> millivolts.get(string) >= floor)
                .sorted(Comparator.comparing(millivolts::get).reversed())
                .toList();
        boolean complete = nextString().isEmpty();
        if (risen.isEmpty()) {
            return nothing(complete);
        }
        double best = millivolts.get(risen.get(0));
        double second = millivolts.entrySet().stream()
                .filter(entry -> !entry.getKey().equals(risen.get(0)))
                .mapToDouble(Map.Entry::getValue)
                .max()
                .orElse(0);
        if (best >= STANDS_OUT * second) {
            return string(risen.get(0), best, second, complete);
        }
        double weakest = millivolts.values().stream().min(Double::compare).orElseThrow();
        if (risen.size() == millivolts.size() && risen.size() > 1 && best <= MIXED_SPREAD * weakest) {
            return new PinGuess(
                    new PinRole.Mixed(),
                    complete ? 0.85 : 0.6,
                    "Every bowed string shows there alike: " + listed(millivolts) + ".",
                    complete ? "" : bow(nextString().getAsInt()));
        }
        return new PinGuess(
                new PinRole.Unknown(),
                0.3,
                "Several strings show there, but not alike: " + listed(millivolts) + ".",
                "Bow string " + risen.get(0) + " with the others damped, then string " + risen.get(1)
                        + ", and measure pin " + label + " again.");
    }

    private PinGuess nothing(boolean complete) {
        double confidence = (complete ? 0.8 : 0.4) + (probe.toGround() instanceof MeterReading.NoConnection ? 0.1 : 0);
        return new PinGuess(
                complete ? new PinRole.Unused() : new PinRole.Unknown(),
                confidence,
                "Nothing that was bowed shows there, and it holds no voltage.",
                complete ? "" : bow(nextString().getAsInt()));
    }

    private PinGuess string(int string, double best, double second, boolean complete) {
        boolean alone = probe.bowedMillivolts().size() == 1;
        String others = alone
                ? "no other string has been bowed"
                : "other strings stay at or below " + Figures.plain(second) + " mV";
        double clear = second <= 0 ? 1 : Math.min(1, Math.log10(best / second));
        double confidence = alone ? 0.4 : (complete ? 0.7 + 0.25 * clear : 0.6);
        return new PinGuess(
                new PinRole.StringSignal(string),
                confidence,
                "String " + string + " raises it to " + Figures.plain(best) + " mV, and " + others + ".",
                complete ? "" : bow(nextString().getAsInt()));
    }

    /** The first string not yet measured on this pin. */
    private OptionalInt nextString() {
        return table.stringNumbers()
                .filter(string -> !probe.bowedMillivolts().containsKey(string))
                .findFirst();
    }

    private String bow(int string) {
        return "Bow string " + string + " with the others damped and measure pin " + label + " in mV AC.";
    }

    private static String listed(Map<Integer, Double> millivolts) {
        return millivolts.entrySet().stream()
                .map(entry -> "string " + entry.getKey() + " " + Figures.plain(entry.getValue()) + " mV")
                .collect(Collectors.joining(", "));
    }
}
