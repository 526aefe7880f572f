package rosinbook.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Objects;
import rosinbook.notebook.Content;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Recipe;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Setlist;
import rosinbook.readout.Phrasing;
import rosinbook.readout.ReadableChange;
import rosinbook.readout.Readout;
import rosinbook.readout.RecipeReadout;
import rosinbook.readout.Titles;

/** Changes between two revisions in a player's words; recipes are compared as they resolve. */
final class SheetChanges {
    private SheetChanges() {}

    static List<ReadableChange> between(Pages pages, Revision was, Revision now) {
        Readout readout = new Readout(phrasing(pages, now.content()));
        return now.kind() == Kind.RECIPES
                ? readout.changes(RecipeReadout.resolvedContent(pages, was), RecipeReadout.resolvedContent(pages, now))
                : readout.changes(plain(was), plain(now));
    }

    /** The words for a content: a recipe's come from its synth. */
    static Phrasing phrasing(Pages pages, Content content) {
        return content instanceof Recipe recipe
                ? RecipeReadout.phrasing(pages, recipe)
                : Phrasing.plain(Titles.in(pages));
    }

    /** A played set repeats its rig in every item; only an item on another rig is worth telling. */
    private static ObjectNode plain(Revision revision) {
        ObjectNode content = revision.json().deepCopy();
        if (revision.content() instanceof Setlist set) {
            set.items().forEach((id, item) -> {
                if (Objects.equals(item.rig(), set.rig())) {
                    content.withObject("/items/" + id).remove("rig");
                }
            });
        }
        return content;
    }
}
