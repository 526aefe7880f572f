package rosinbook.notebook;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import rosinbook.compare.MergePatch;

/** Recipes on top of their starting points. */
public final class Recipes {
    private Recipes() {}

    /**
     * The whole of a recipe: its own settings over those of the starting point's revision it follows (RFC 7396).
     *
     * @throws NoSuchSheet if the starting point's revision is not there
     * @throws InvalidContent if the two together make no whole recipe, naming the place below {@code /settings}
     */
    public static Resolved resolve(Pages pages, Revision revision) {
        return resolve(pages, revision, (Recipe) revision.content());
    }

    static Resolved resolve(Pages pages, Revision revision, Recipe recipe) {
        if (recipe.follows() == null) {
            return new Resolved(
                    revision,
                    Optional.empty(),
                    recipe.settings(),
                    ContentJson.read("/settings", recipe.settings(), RecipeSettings.class));
        }
        Revision start = startingPoint(pages, recipe.follows());
        return over(start, revision, recipe);
    }

    /** The same recipe as it would be over this revision of its starting point. */
    static Resolved over(Revision start, Revision revision, Recipe recipe) {
        ObjectNode base = ((Recipe) start.content()).settings();
        ObjectNode whole = (ObjectNode) MergePatch.apply(base, recipe.settings());
        RecipeSettings settings = ContentJson.read("/settings", whole, RecipeSettings.class);
        return new Resolved(revision, Optional.of(start), ContentJson.tree(settings), settings);
    }

    static Revision startingPoint(Pages pages, Reference reference) {
        Revision start = pages.revision(reference.id(), reference.revision())
                .orElseThrow(() -> new InvalidContent(
                        "/follows", "there is no revision " + reference.revision() + " of that starting point"));
        if (!(start.content() instanceof Recipe recipe) || !recipe.isStartingPoint()) {
            throw new InvalidContent("/follows", "that sheet is not a starting point; follow a recipe without a piece");
        }
        return start;
    }
}
