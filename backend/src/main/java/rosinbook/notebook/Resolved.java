package rosinbook.notebook;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;

/**
 * A recipe with everything in it.
 *
 * @param recipe the revision that was resolved
 * @param startingPoint the revision it follows; empty if it stands alone
 * @param json the whole settings
 * @param settings the same as a record
 */
public record Resolved(Revision recipe, Optional<Revision> startingPoint, ObjectNode json, RecipeSettings settings) {
    /** Whether the value at this pointer of the settings comes from the starting point. */
    public boolean isFromStartingPoint(rosinbook.compare.Pointer at) {
        if (startingPoint.isEmpty()) {
            return false;
        }
        var patched = at.in(recipe.json().path("settings"));
        return patched.isMissingNode();
    }
}
