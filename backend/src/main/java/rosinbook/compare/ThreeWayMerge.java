package rosinbook.compare;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Two edits of one document, put together.
 *
 * @param merged both edits where they do not touch; where they do, what "theirs" says
 * @param conflicts places where both changed the same thing differently
 */
public record ThreeWayMerge(JsonNode merged, List<Conflict> conflicts) {
    /** Members that say what an object is: which sheet it names, which file, which kind of wire or pin. */
    private static final List<String> NATURE = List.of("id", "sha256", "via", "carries");

    public ThreeWayMerge {
        conflicts = List.copyOf(conflicts);
    }

    /**
     * A place with two answers.
     *
     * @param base what both started from; empty if it was not there
     * @param theirs what was saved first; empty if they left it out
     * @param yours what is being saved; empty if you left it out
     */
    public record Conflict(Pointer at, Optional<JsonNode> base, Optional<JsonNode> theirs, Optional<JsonNode> yours) {}

    /**
     * Merges two edits of {@code base}. Edits touch when one's place is, or lies within, the other's and they do not come
     * to the same. An object that was put in place of another one is one edit: a mixture of the two would be a third that
     * nobody chose.
     */
    public static ThreeWayMerge of(JsonNode base, JsonNode theirs, JsonNode yours) {
        List<Change> theirChanges =
                Comparison.of(base, theirs, ThreeWayMerge::isAnother).changes();
        List<Change> free = new ArrayList<>();
        List<Conflict> conflicts = new ArrayList<>();
        for (Change mine : Comparison.of(base, yours, ThreeWayMerge::isAnother).changes()) {
            List<Change> touching = theirChanges.stream()
                    .filter(other -> touch(mine.at(), other.at()))
                    .toList();
            if (touching.isEmpty()) {
                free.add(mine);
            } else if (!touching.equals(List.of(mine))) {
                Pointer at = touching.stream().map(Change::at).reduce(mine.at(), ThreeWayMerge::outer);
                Conflict conflict =
                        new Conflict(at, present(at.in(base)), present(at.in(theirs)), present(at.in(yours)));
                if (conflicts.stream().noneMatch(known -> known.at().equals(at))) {
                    conflicts.add(conflict);
                }
            }
        }
        return new ThreeWayMerge(new Comparison(free).applyTo(theirs), conflicts);
    }

    private static boolean isAnother(JsonNode one, JsonNode other) {
        return NATURE.stream()
                .anyMatch(member -> one.path(member).isTextual()
                        && other.path(member).isTextual()
                        && !one.path(member).equals(other.path(member)));
    }

    private static boolean touch(Pointer one, Pointer other) {
        return one.startsWith(other) || other.startsWith(one);
    }

    private static Pointer outer(Pointer one, Pointer other) {
        return one.steps().size() <= other.steps().size() ? one : other;
    }

    private static Optional<JsonNode> present(JsonNode node) {
        return node.isMissingNode() ? Optional.empty() : Optional.of(node);
    }

    public boolean isClean() {
        return conflicts.isEmpty();
    }
}
