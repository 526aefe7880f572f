package rosinbook.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Objects;
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
        if (now.content() instanceof Recipe recipe) {
            return new Readout(RecipeReadout.phrasing(pages, recipe))
                    .changes(RecipeReadout.resolvedContent(pages, was), RecipeReadout.resolvedContent(pages, now));
        }
        return new Readout(Phrasing.plain(Titles.in(pages))).changes(plain(was), plain(now));
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
