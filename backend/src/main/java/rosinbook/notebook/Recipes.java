package rosinbook.notebook;

import com.fasterxml.jackson.databind.JsonNode;
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
        ObjectNode whole = settingsOver((Recipe) start.content(), recipe);
        return new Resolved(
                revision, Optional.of(start), whole, ContentJson.read("/settings", whole, RecipeSettings.class));
    }

    /**
     * The whole settings of a recipe over those of a starting point (RFC 7396).
     *
     * @throws InvalidContent if the two together make no whole recipe, naming the place below {@code /settings}
     */
    public static ObjectNode settingsOver(Recipe start, Recipe recipe) {
        JsonNode whole = MergePatch.apply(start.settings(), recipe.settings());
        return ContentJson.tree(ContentJson.read("/settings", whole, RecipeSettings.class));
    }

    /** What is wrong with a starting point that is to be for a piece although others follow it. */
    public static InvalidContent stillFollowed() {
        return new InvalidContent(
                "/piece", "other recipes follow this starting point; give the piece a recipe of its own");
    }

    static Revision startingPoint(Pages pages, Reference reference) {
        if (reference.revision() == null) {
            throw new InvalidContent("/follows", "the revision it follows is missing");
        }
        Revision start = pages.revision(reference.id(), reference.revision())
                .orElseThrow(() -> new InvalidContent(
                        "/follows", "there is no revision " + reference.revision() + " of that starting point"));
        if (!(start.content() instanceof Recipe recipe) || !recipe.isStartingPoint()) {
            throw new InvalidContent("/follows", "that sheet is not a starting point; follow a recipe without a piece");
        }
        return start;
    }
}
