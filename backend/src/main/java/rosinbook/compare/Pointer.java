package rosinbook.compare;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A place in a JSON document (RFC 6901).
 *
 * @param steps member names from the root, unescaped; none for the whole document
 */
public record Pointer(List<String> steps) implements Comparable<Pointer> {
    /** The whole document. */
    public static final Pointer ROOT = new Pointer(List.of());

    public Pointer {
        steps = List.copyOf(steps);
    }

    /** @throws IllegalArgumentException if the text is neither empty nor begins with a slash */
    public static Pointer parse(String text) {
        if (text.isEmpty()) {
            return ROOT;
        }
        if (!text.startsWith("/")) {
            throw new IllegalArgumentException("a JSON Pointer is empty or begins with '/'");
        }
        return new Pointer(Arrays.stream(text.substring(1).split("/", -1))
                .map(step -> step.replace("~1", "/").replace("~0", "~"))
                .toList());
    }

    public Pointer plus(String step) {
        var longer = new java.util.ArrayList<>(steps);
        longer.add(step);
        return new Pointer(longer);
    }

    public boolean startsWith(Pointer prefix) {
        return steps.size() >= prefix.steps.size()
                && steps.subList(0, prefix.steps.size()).equals(prefix.steps);
    }

    /** The node at this place; a missing node if there is none. Steps into arrays are element numbers. */
    public JsonNode in(JsonNode document) {
        JsonNode node = document;
        for (String step : steps) {
            node = node.isArray() && step.matches("0|[1-9]\\d{0,8}")
                    ? node.path(Integer.parseInt(step))
                    : node.path(step);
        }
        return node;
    }

    /** RFC 6901 text; {@link #parse} reads it back. */
    @Override
    public String toString() {
        return steps.stream()
                .map(step -> "/" + step.replace("~", "~0").replace("/", "~1"))
                .collect(Collectors.joining());
    }

    /** Step by step, in the order of the names. */
    @Override
    public int compareTo(Pointer other) {
        for (int i = 0; i < Math.min(steps.size(), other.steps.size()); i++) {
            int order = steps.get(i).compareTo(other.steps.get(i));
            if (order != 0) {
                return order;
            }
        }
        return Integer.compare(steps.size(), other.steps.size());
    }
}
