package rosinbook.web;

import java.util.List;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Recipe;
import rosinbook.notebook.Revision;
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
        return new Readout(Phrasing.plain(Titles.in(pages))).changes(was.json(), now.json());
    }
}
