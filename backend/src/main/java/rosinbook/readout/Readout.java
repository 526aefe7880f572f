package rosinbook.readout;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rosinbook.compare.Change;
import rosinbook.compare.Comparison;
import rosinbook.compare.Moves;
import rosinbook.compare.Pointer;
import rosinbook.notebook.Words;
import rosinbook.readout.ReadableChange.Sort;

/** Puts the differences between two contents of one kind into words. */
public final class Readout {
    private static final Set<String> ORDERED = Set.of("voices", "effects", "items");

    private final Phrasing phrasing;

    public Readout(Phrasing phrasing) {
        this.phrasing = phrasing;
    }

    /** Every difference, in the order of the content; equal contents give none. */
    public List<ReadableChange> changes(JsonNode was, JsonNode now) {
        List<ReadableChange> readable = new ArrayList<>();
        for (Change change : whole(Comparison.of(was, now), was, now)) {
            readable.add(readable(change, was, now));
        }
        readable.addAll(moves(Pointer.ROOT, was, now));
        return readable;
    }

    /** Changes inside something that is read as one value become a change of that value; order numbers are left out. */
    private static List<Change> whole(Comparison comparison, JsonNode was, JsonNode now) {
        Map<Pointer, Change> changes = new LinkedHashMap<>();
        for (Change change : comparison.changes()) {
            if (isOrder(change.at())) {
                continue;
            }
            Pointer at = outermostValue(change.at(), was, now);
            changes.putIfAbsent(at, new Change(at, present(at.in(was)), present(at.in(now))));
        }
        return List.copyOf(changes.values());
    }

    private static boolean isOrder(Pointer at) {
        List<String> steps = at.steps();
        int size = steps.size();
        return size >= 3 && steps.get(size - 1).equals("order") && ORDERED.contains(steps.get(size - 3));
    }

    private static Pointer outermostValue(Pointer at, JsonNode was, JsonNode now) {
        for (int length = 1; length < at.steps().size(); length++) {
            Pointer outer = new Pointer(at.steps().subList(0, length));
            if (Phrasing.isOneValue(outer, outer.in(was)) || Phrasing.isOneValue(outer, outer.in(now))) {
                return outer;
            }
        }
        return at;
    }

    private static Optional<JsonNode> present(JsonNode node) {
        return node.isMissingNode() || node.isNull() ? Optional.empty() : Optional.of(node);
    }

    private ReadableChange readable(Change change, JsonNode was, JsonNode now) {
        Pointer at = change.at();
        Optional<String> older = change.was().map(value -> phrasing.value(at, was, value));
        Optional<String> newer = change.now().map(value -> phrasing.value(at, now, value));
        JsonNode shownIn = change.now().isPresent() ? now : was;
        String unit = phrasing.unit(at, shownIn, change.now().or(change::was).orElseThrow());
        return new ReadableChange(
                at.toString(),
                phrasing.where(at, shownIn),
                older.isEmpty() ? Sort.ADDED : newer.isEmpty() ? Sort.REMOVED : Sort.CHANGED,
                older.orElse(null),
                newer.orElse(null),
                difference(change).orElse(null),
                unit);
    }

    private static Optional<String> difference(Change change) {
        Optional<JsonNode> was = change.was().filter(JsonNode::isNumber);
        Optional<JsonNode> now = change.now().filter(JsonNode::isNumber);
        return was.isPresent() && now.isPresent()
                ? Optional.of(Words.signed(now.get().doubleValue() - was.get().doubleValue()))
                : Optional.empty();
    }

    private List<ReadableChange> moves(Pointer at, JsonNode was, JsonNode now) {
        List<ReadableChange> moves = new ArrayList<>();
        for (Map.Entry<String, JsonNode> member : now.properties()) {
            JsonNode older = was.path(member.getKey());
            if (!older.isObject() || !member.getValue().isObject()) {
                continue;
            }
            Pointer below = at.plus(member.getKey());
            if (ORDERED.contains(member.getKey())) {
                moves.addAll(movesWithin(below, older, member.getValue(), now));
            } else {
                moves.addAll(moves(below, older, member.getValue()));
            }
        }
        return moves;
    }

    private List<ReadableChange> movesWithin(Pointer at, JsonNode was, JsonNode now, JsonNode parent) {
        List<String> older = inOrder(was);
        List<String> newer = inOrder(now);
        Set<String> moved = Moves.between(older, newer);
        return newer.stream()
                .filter(moved::contains)
                .map(key -> new ReadableChange(
                        at.plus(key).toString(),
                        phrasing.where(
                                new Pointer(List.of(at.steps().get(at.steps().size() - 1), key)), parent),
                        Sort.MOVED,
                        ordinal(older.indexOf(key) + 1),
                        ordinal(newer.indexOf(key) + 1),
                        null,
                        ""))
                .collect(Collectors.toList());
    }

    /** Keys of a map of things with an order, in that order. */
    static List<String> inOrder(JsonNode entries) {
        return entries.properties().stream()
                .sorted(Comparator.comparing((Map.Entry<String, JsonNode> entry) ->
                                entry.getValue().path("order").asDouble())
                        .thenComparing(Map.Entry::getKey))
                .map(Map.Entry::getKey)
                .toList();
    }

    /** {@code 1st}, {@code 2nd}, {@code 3rd}, {@code 4th}, {@code 11th} … */
    static String ordinal(int number) {
        int last = number % 10;
        boolean teen = number % 100 / 10 == 1;
        String ending = teen ? "th" : last == 1 ? "st" : last == 2 ? "nd" : last == 3 ? "rd" : "th";
        return number + ending;
    }
}
