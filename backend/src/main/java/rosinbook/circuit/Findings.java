package rosinbook.circuit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Collects findings over all settings of the switches, each once, the gravest first. */
final class Findings {
    private final Map<Finding, List<String>> statesByFinding = new LinkedHashMap<>();
    private String state = "";
    private int states;

    void begin(String switches) {
        state = switches;
        states++;
    }

    void add(Rule rule, String place, List<String> routes, String sentence, String remedy) {
        var finding = new Finding(rule, rule.severity(), place, routes, sentence, remedy);
        List<String> seen = statesByFinding.computeIfAbsent(finding, unseen -> new ArrayList<>());
        if (!seen.contains(state)) {
            seen.add(state);
        }
    }

    List<Finding> list() {
        List<Finding> list = new ArrayList<>();
        statesByFinding.forEach((finding, seen) -> list.add(
                states > 1 && seen.size() < states && !seen.get(0).isEmpty() ? finding.at(seen.get(0)) : finding));
        list.sort(Comparator.comparing(Finding::code));
        return List.copyOf(list);
    }
}
