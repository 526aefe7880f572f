package rosinbook.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Infers what every pin of an unknown connector carries, and where its readings contradict each other. */
public final class ProbeInference {
    private final ProbeTable table;
    private final Map<String, PinGuess> guesses = new LinkedHashMap<>();
    private final List<ProbeReport.Contradiction> contradictions = new ArrayList<>();

    private ProbeInference(ProbeTable table) {
        this.table = table;
    }

    /** A guess for every pin; pins at odds with each other are guessed with half the confidence. */
    public static ProbeReport of(ProbeTable table) {
        var inference = new ProbeInference(table);
        table.pins().keySet().forEach(label -> inference.guesses.put(label, PinInference.of(label, table)));
        table.pins().forEach(inference::withinPin);
        inference.stringsOnce();
        inference.mixedOnce();
        inference.groundFound();
        return new ProbeReport(inference.guesses, inference.contradictions);
    }

    private void withinPin(String label, PinProbe probe) {
        double highestVolts = java.util.Arrays.stream(probe.steadyVolts())
                .map(Math::abs)
                .max()
                .orElse(0);
        double loudest =
                probe.bowedMillivolts().values().stream().max(Double::compare).orElse(0.0);
        double silent = probe.silentMillivolts().orElse(0.0);
        boolean rises = loudest >= PinInference.FLOOR_MILLIVOLTS && loudest >= PinInference.RISE * silent;
        if (probe.isShorted() && highestVolts >= PinInference.RAIL_VOLTS) {
            doubt(
                    List.of(label),
                    "Pin " + label + " measures as joined to ground and yet holds " + Figures.volts(highestVolts) + ".",
                    "Measure its resistance to ground again with everything switched off and unplugged.");
        } else if (probe.isShorted() && rises) {
            doubt(
                    List.of(label),
                    "Pin " + label + " measures as joined to ground and yet shows " + Figures.plain(loudest) + " mV.",
                    "Measure its resistance to ground again, then bow once more.");
        } else if (highestVolts >= PinInference.RAIL_VOLTS && rises && loudest > 50) {
            doubt(
                    List.of(label),
                    "Pin " + label + " holds a steady voltage and yet shows " + Figures.plain(loudest)
                            + " mV when a string is bowed.",
                    "Measure it in mV AC with nothing played: a rail may carry hum.");
        }
        if (!probe.bowedMillivolts().isEmpty() && silent > PinInference.FLOOR_MILLIVOLTS && silent > loudest) {
            doubt(
                    List.of(label),
                    "Pin " + label + " is louder with nothing played (" + Figures.plain(silent) + " mV) than while a"
                            + " string is bowed (" + Figures.plain(loudest) + " mV).",
                    "Damp all strings and measure pin " + label + " in mV AC again with nothing played.");
        }
    }

    private void stringsOnce() {
        table.stringNumbers().forEach(string -> {
            List<String> claiming = labels(new PinRole.StringSignal(string));
            if (claiming.size() > 1) {
                doubt(
                        claiming,
                        "Pins " + String.join(" and ", claiming) + " both seem to carry string " + string + ".",
                        "Measure the resistance between them with everything off: joined pins show next to nothing;"
                                + " otherwise bow string " + string + " once more and compare.");
            }
            boolean bowedEverywhere = table.pins().values().stream()
                    .anyMatch(probe -> probe.bowedMillivolts().containsKey(string));
            if (claiming.isEmpty() && bowedEverywhere) {
                contradictions.add(new ProbeReport.Contradiction(
                        List.of(),
                        "String " + string + " was bowed, and no pin carries it alone.",
                        "Bow string " + string + " with the others damped, and measure "
                                + candidates().map(labels -> "pins " + labels).orElse("every pin") + " in mV AC."));
            }
        });
    }

    private void mixedOnce() {
        List<String> mixed = labels(new PinRole.Mixed());
        if (mixed.size() > 1) {
            doubt(
                    mixed,
                    "Pins " + String.join(" and ", mixed) + " both seem to carry the mixed signal.",
                    "Measure the resistance between them with everything off; joined pins show next to nothing.");
        }
    }

    private void groundFound() {
        if (labels(new PinRole.Ground()).isEmpty()) {
            contradictions.add(new ProbeReport.Contradiction(
                    List.of(),
                    "No pin is known to be ground.",
                    "With everything off, measure the resistance of every pin to the connector's metal shell."));
        }
    }

    private Optional<String> candidates() {
        List<String> unknown = labels(new PinRole.Unknown());
        return unknown.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", unknown));
    }

    private List<String> labels(PinRole role) {
        return guesses.entrySet().stream()
                .filter(entry -> entry.getValue().role().equals(role))
                .map(Map.Entry::getKey)
                .toList();
    }

    private void doubt(List<String> labels, String sentence, String settle) {
        contradictions.add(new ProbeReport.Contradiction(labels, sentence, settle));
        labels.forEach(label -> guesses.computeIfPresent(label, (same, guess) -> guess.doubted(0.5)));
    }
}
