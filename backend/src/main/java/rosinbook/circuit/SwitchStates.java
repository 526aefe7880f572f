package rosinbook.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Every way an adapter's switches can stand: route id to position. One empty map when there is no switch. Beyond 32
 * combinations only those in which at most one switch has left its first position.
 */
final class SwitchStates {
    private static final int MAX_STATES = 32;

    private SwitchStates() {}

    static List<Map<String, String>> of(Adapter adapter) {
        Map<String, List<String>> choices = new LinkedHashMap<>();
        adapter.routes().forEach((id, route) -> {
            if (route.via() instanceof Via.Switch choice) {
                choices.put(id, List.copyOf(choice.positions().keySet()));
            }
        });
        double combinations =
                choices.values().stream().mapToDouble(List::size).reduce(1, (product, size) -> product * size);
        return combinations <= MAX_STATES ? all(choices) : oneMoved(choices);
    }

    private static List<Map<String, String>> all(Map<String, List<String>> choices) {
        List<Map<String, String>> states = List.of(Map.of());
        for (var choice : choices.entrySet()) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> state : states) {
                for (String position : choice.getValue()) {
                    longer.add(moved(state, choice.getKey(), position));
                }
            }
            states = longer;
        }
        return states;
    }

    private static List<Map<String, String>> oneMoved(Map<String, List<String>> choices) {
        Map<String, String> first = new LinkedHashMap<>();
        choices.forEach((id, positions) -> first.put(id, positions.get(0)));
        List<Map<String, String>> states = new ArrayList<>(List.of(first));
        choices.forEach((id, positions) ->
                positions.stream().skip(1).forEach(position -> states.add(moved(first, id, position))));
        return states;
    }

    private static Map<String, String> moved(Map<String, String> state, String id, String position) {
        Map<String, String> copy = new LinkedHashMap<>(state);
        copy.put(id, position);
        return copy;
    }

    /** In words, such as {@code switch source at both}; empty for an adapter without switches. */
    static String describe(Map<String, String> state) {
        List<String> words = new ArrayList<>();
        state.forEach((id, position) -> words.add("switch " + id + " at " + position));
        return String.join(", ", words);
    }
}
