package rosinbook.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import rosinbook.notebook.Content;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Recipe;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;
import rosinbook.notebook.TakeSheet;
import rosinbook.readout.Titles;

/** What a list tells of its entries beside their content, asked once for the whole list. */
final class ListExtras {
    private final Titles titles;
    private final Map<UUID, LocalDate> lastPlayed;
    private final Map<UUID, Integer> recipes;
    private final Map<UUID, Integer> followers;

    ListExtras(Pages pages, Kind kind, List<Revision> entries) {
        titles = Titles.in(pages);
        List<UUID> ids = entries.stream().map(Revision::sheetId).toList();
        boolean isPlayed = kind == Kind.PIECES || kind == Kind.RECIPES || kind == Kind.RIGS;
        lastPlayed = isPlayed ? pages.lastPlayed(ids) : Map.of();
        recipes = kind == Kind.PIECES ? pages.useCounts(Content.Relation.PIECE, Kind.RECIPES, ids) : Map.of();
        followers = kind == Kind.RECIPES ? pages.useCounts(Content.Relation.FOLLOWS, Kind.RECIPES, ids) : Map.of();
        pages.fetch(entries.stream().flatMap(ListExtras::named).toList());
    }

    /** The sheets whose titles stand beside an entry. */
    private static Stream<Reference> named(Revision entry) {
        Stream<UUID> ids = Stream.empty();
        if (entry.content() instanceof Recipe recipe) {
            ids = Stream.of(
                            Optional.ofNullable(recipe.piece()),
                            Optional.ofNullable(recipe.follows()).map(Reference::id))
                    .flatMap(Optional::stream);
        } else if (entry.content() instanceof TakeSheet take) {
            ids = Stream.ofNullable(take.rig()).map(Reference::id);
        }
        return ids.map(Reference::newest);
    }

    ObjectNode of(Revision revision) {
        ObjectNode extras = Answers.object();
        Content content = revision.content();
        UUID id = revision.sheetId();
        if (revision.kind() == Kind.PIECES) {
            extras.put("recipes", recipes.getOrDefault(id, 0));
        }
        if (content instanceof Recipe recipe) {
            extras.put("followers", followers.getOrDefault(id, 0));
            Answers.putIfPresent(
                    extras, "pieceTitle", Optional.ofNullable(recipe.piece()).flatMap(titles::of));
            Answers.putIfPresent(
                    extras,
                    "followsTitle",
                    Optional.ofNullable(recipe.follows()).flatMap(start -> titles.of(start.id())));
        }
        if (content instanceof TakeSheet take) {
            Answers.putIfPresent(
                    extras, "rigTitle", Optional.ofNullable(take.rig()).flatMap(rig -> titles.of(rig.id())));
        }
        Answers.putIfPresent(extras, "lastPlayed", Optional.ofNullable(lastPlayed.get(id)));
        return extras;
    }
}
