package rosinbook.readout;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rosinbook.notebook.Content;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Recipe;
import rosinbook.notebook.Recipes;
import rosinbook.notebook.Revision;

/**
 * A recipe that follows a starting point, and how it would change with it.
 *
 * @param follows the starting point's revision it follows now
 * @param changes in the resolved recipe
 * @param problem why it could not follow on; absent if it can
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record FollowerPreview(
        UUID id,
        String title,
        Optional<String> pieceTitle,
        int follows,
        List<ReadableChange> changes,
        Optional<String> problem) {
    /** Who follows a starting point. */
    @JsonInclude(JsonInclude.Include.NON_ABSENT)
    public record Follower(UUID id, String title, Optional<String> pieceTitle, int follows) {}

    /** Every recipe whose newest revision follows this starting point, by title. */
    public static List<Follower> followers(Pages pages, UUID startingPoint) {
        return revisions(pages, startingPoint).stream()
                .map(revision -> {
                    Recipe recipe = (Recipe) revision.content();
                    return new Follower(
                            revision.sheetId(),
                            recipe.title(),
                            Titles.in(pages).of(recipe.piece()),
                            recipe.follows().revision());
                })
                .toList();
    }

    private static List<Revision> revisions(Pages pages, UUID startingPoint) {
        return pages.usedBy(startingPoint).stream()
                .filter(use -> use.relation() == Content.Relation.FOLLOWS)
                .map(use -> pages.newest(use.id()).orElseThrow())
                .toList();
    }

    /**
     * How every follower would change if the starting point were saved with this content. Nothing is saved.
     *
     * @throws InvalidContent if the content is no valid recipe, or is for a piece although others follow it
     */
    public static List<FollowerPreview> of(Pages pages, Revision start, ObjectNode content) {
        Recipe changed = (Recipe) ContentJson.read(Kind.RECIPES, content);
        List<Revision> followers = revisions(pages, start.sheetId());
        if (!followers.isEmpty() && !changed.isStartingPoint()) {
            throw Recipes.stillFollowed();
        }
        return followers.stream()
                .map(follower -> preview(pages, follower, changed))
                .toList();
    }

    private static FollowerPreview preview(Pages pages, Revision follower, Recipe start) {
        Recipe recipe = (Recipe) follower.content();
        ObjectNode was = Recipes.resolve(pages, follower).json();
        List<ReadableChange> changes = List.of();
        Optional<String> problem = Optional.empty();
        try {
            ObjectNode now = Recipes.settingsOver(start, recipe);
            changes = new Readout(RecipeReadout.phrasing(pages, recipe)).changes(was, now);
        } catch (InvalidContent cannotFollow) {
            problem = Optional.of(cannotFollow.getMessage());
        }
        return new FollowerPreview(
                follower.sheetId(),
                recipe.title(),
                Titles.in(pages).of(recipe.piece()),
                recipe.follows().revision(),
                changes,
                problem);
    }
}
