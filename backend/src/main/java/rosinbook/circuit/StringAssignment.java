package rosinbook.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import rosinbook.pitch.Note;

/**
 * Which string goes to which input: as many strings as possible, in order, with the smallest sum of semitones between
 * open notes; among equals the earlier inputs. Where a note is not known, each place of difference counts as a fourth.
 */
final class StringAssignment {
    private static final int SEMITONES_A_PLACE = 5;
    private static final Map<Integer, Note> GUITAR = Map.of(
            1,
            Note.parse("E4"),
            2,
            Note.parse("B3"),
            3,
            Note.parse("G3"),
            4,
            Note.parse("D3"),
            5,
            Note.parse("A2"),
            6,
            Note.parse("E2"));

    private final List<Integer> strings;
    private final List<Integer> inputs;
    private final Map<Integer, Note> openNotes;
    private final Map<Integer, Note> inputNotes;

    private StringAssignment(
            List<Integer> strings, List<Integer> inputs, Map<Integer, Note> openNotes, Map<Integer, Note> inputNotes) {
        this.strings = strings;
        this.inputs = inputs;
        this.openNotes = openNotes;
        this.inputNotes = inputNotes.isEmpty() ? GUITAR : inputNotes;
    }

    /**
     * Input by string.
     *
     * @param strings numbers of the strings that have a pin, rising
     * @param inputs numbers of the inputs that have a pin, rising
     */
    static SortedMap<Integer, Integer> of(
            List<Integer> strings, List<Integer> inputs, Map<Integer, Note> openNotes, Map<Integer, Note> inputNotes) {
        return new StringAssignment(List.copyOf(strings), List.copyOf(inputs), openNotes, inputNotes).solve();
    }

    /** Dynamic programme over the first i strings and the first j inputs; an unserved string costs more than any notes. */
    private SortedMap<Integer, Integer> solve() {
        int unserved = 100_000;
        long[][] cost = new long[strings.size() + 1][inputs.size() + 1];
        for (int i = 1; i <= strings.size(); i++) {
            cost[i][0] = (long) i * unserved;
            for (int j = 1; j <= inputs.size(); j++) {
                long matched = cost[i - 1][j - 1] + semitones(i - 1, j - 1);
                long withoutString = cost[i - 1][j] + unserved;
                cost[i][j] = Math.min(cost[i][j - 1], Math.min(matched, withoutString));
            }
        }
        SortedMap<Integer, Integer> assignment = new TreeMap<>();
        int i = strings.size();
        int j = inputs.size();
        while (i > 0 && j > 0) {
            if (cost[i][j] == cost[i][j - 1]) {
                j--;
            } else if (cost[i][j] == cost[i - 1][j] + unserved) {
                i--;
            } else {
                assignment.put(strings.get(--i), inputs.get(--j));
            }
        }
        return assignment;
    }

    private int semitones(int stringIndex, int inputIndex) {
        Note open = openNotes.get(strings.get(stringIndex));
        Note wanted = inputNotes.get(inputs.get(inputIndex));
        if (open == null || wanted == null) {
            return SEMITONES_A_PLACE * Math.abs(strings.get(stringIndex) - inputs.get(inputIndex));
        }
        return Math.abs(open.midi() - wanted.midi());
    }

    /** Numbers of a connector's string pins, rising, each once. */
    static List<Integer> numbers(Connector connector) {
        List<Integer> numbers = new ArrayList<>();
        for (Pin pin : connector.pins().values()) {
            if (pin.role() instanceof PinRole.StringSignal signal && !numbers.contains(signal.string())) {
                numbers.add(signal.string());
            }
        }
        numbers.sort(null);
        return numbers;
    }
}
