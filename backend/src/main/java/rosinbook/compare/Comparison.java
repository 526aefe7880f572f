package rosinbook.compare;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.BiPredicate;

/**
 * What changed from an older document to a newer one.
 *
 * @param changes in the order of their places; none of two lies within another
 */
public record Comparison(List<Change> changes) {
    public Comparison {
        changes = List.copyOf(changes);
    }

    /** Member by member; equal documents give no changes. */
    public static Comparison of(JsonNode was, JsonNode now) {
        return of(was, now, (one, other) -> false);
    }

    /**
     * Member by member, but for objects that stand for different things.
     *
     * @param isAnother whether the newer of two objects is compared as a whole
     */
    static Comparison of(JsonNode was, JsonNode now, BiPredicate<JsonNode, JsonNode> isAnother) {
        List<Change> changes = new ArrayList<>();
        collect(Pointer.ROOT, was, now, isAnother, changes);
        return new Comparison(changes);
    }

    private static void collect(
            Pointer at, JsonNode was, JsonNode now, BiPredicate<JsonNode, JsonNode> isAnother, List<Change> changes) {
        if (was.equals(now)) {
            return;
        }
        if (!was.isObject() || !now.isObject() || isAnother.test(was, now)) {
            changes.add(new Change(at, Optional.of(was), Optional.of(now)));
            return;
        }
        TreeSet<String> names = new TreeSet<>();
        was.fieldNames().forEachRemaining(names::add);
        now.fieldNames().forEachRemaining(names::add);
        for (String name : names) {
            Pointer below = at.plus(name);
            if (!was.has(name)) {
                changes.add(new Change(below, Optional.empty(), Optional.of(now.get(name))));
            } else if (!now.has(name)) {
                changes.add(new Change(below, Optional.of(was.get(name)), Optional.empty()));
            } else {
                collect(below, was.get(name), now.get(name), isAnother, changes);
            }
        }
    }

    public boolean isEmpty() {
        return changes.isEmpty();
    }

    /** The way back: what changed from the newer document to the older. */
    public Comparison reversed() {
        return new Comparison(changes.stream()
                .map(change -> new Change(change.at(), change.now(), change.was()))
                .toList());
    }

    /** The newer document, from the older. */
    public JsonNode applyTo(JsonNode older) {
        JsonNode result = older.deepCopy();
        for (Change change : changes) {
            result = applied(change, result);
        }
        return result;
    }

    private static JsonNode applied(Change change, JsonNode document) {
        List<String> steps = change.at().steps();
        if (steps.isEmpty()) {
            return change.now().orElseThrow().deepCopy();
        }
        ObjectNode parent = (ObjectNode) new Pointer(steps.subList(0, steps.size() - 1)).in(document);
        String name = steps.get(steps.size() - 1);
        change.now().ifPresentOrElse(now -> parent.set(name, now.deepCopy()), () -> parent.remove(name));
        return document;
    }

    /** The same as a JSON Patch document (RFC 6902), to be applied to the older document. */
    public ArrayNode toJsonPatch() {
        ArrayNode patch = JsonNodeFactory.instance.arrayNode();
        for (Change change : changes) {
            ObjectNode operation = patch.addObject();
            operation.put("op", change.was().isEmpty() ? "add" : change.now().isEmpty() ? "remove" : "replace");
            operation.put("path", change.at().toString());
            change.now().ifPresent(now -> operation.set("value", now));
        }
        return patch;
    }
}
