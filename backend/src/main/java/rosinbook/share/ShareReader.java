package rosinbook.share;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import rosinbook.notebook.Instrument;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Piece;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Rig;
import rosinbook.notebook.Setlist;
import rosinbook.readout.RecipeReadout;
import rosinbook.share.ShareView.ItemView;
import rosinbook.share.ShareView.RecipeView;
import rosinbook.share.ShareView.RigView;
import rosinbook.share.ShareView.SetView;
import rosinbook.share.ShareView.StringView;

/** Reads a shared sheet and what belongs to it. */
final class ShareReader {
    private final Pages pages;

    ShareReader(Pages pages) {
        this.pages = pages;
    }

    ShareView view(Revision root, boolean keptUpToDate) {
        Optional<SetView> setlist = Optional.empty();
        Optional<RecipeView> recipe = Optional.empty();
        Optional<RigView> rig = Optional.empty();
        if (root.content() instanceof Setlist set) {
            setlist = Optional.of(set(set));
        } else if (root.content() instanceof Rig) {
            rig = Optional.of(rig(root));
        } else {
            recipe = Optional.of(recipe(root));
        }
        return new ShareView(
                root.kind(), root.content().title(), root.number(), root.savedAt(), keptUpToDate, setlist, recipe, rig);
    }

    private SetView set(Setlist set) {
        List<String> order = set.order();
        List<ItemView> items = IntStream.range(0, order.size())
                .mapToObj(index -> item(index + 1, set.items().get(order.get(index)), set.rig()))
                .toList();
        return new SetView(
                set.date(),
                set.place(),
                set.played(),
                set.notes(),
                Optional.ofNullable(set.rig()).map(this::rig),
                items);
    }

    private ItemView item(int position, Setlist.Item item, Reference setRig) {
        Piece piece = (Piece) Notebook.find(pages, Kind.PIECES, Reference.newest(item.piece()))
                .content();
        Optional<RigView> rig = Optional.ofNullable(item.rig())
                .filter(own -> !Objects.equals(own, setRig))
                .map(this::rig);
        return new ItemView(
                position,
                piece.title(),
                piece.composer(),
                Optional.ofNullable(piece.tempoBpm()),
                piece.meter(),
                piece.key(),
                item.note(),
                Optional.ofNullable(item.recipe())
                        .map(reference -> recipe(Notebook.find(pages, Kind.RECIPES, reference))),
                rig);
    }

    private RecipeView recipe(Revision revision) {
        RecipeReadout readout = RecipeReadout.of(pages, revision);
        return new RecipeView(
                revision.content().title(),
                revision.number(),
                readout.resolved().startingPoint().map(start -> start.content().title()),
                readout.lines());
    }

    private RigView rig(Reference reference) {
        return rig(Notebook.find(pages, Kind.RIGS, reference));
    }

    private RigView rig(Revision revision) {
        Rig rig = (Rig) revision.content();
        Revision instrument = Notebook.find(pages, Kind.INSTRUMENTS, rig.instrument());
        Revision synth = Notebook.find(pages, Kind.SYNTHS, rig.synth());
        Instrument strings = (Instrument) instrument.content();
        return new RigView(
                rig.title(),
                revision.number(),
                instrument.content().title(),
                synth.content().title(),
                rig.assignments().entrySet().stream()
                        .map(entry -> string(entry.getKey(), entry.getValue(), strings))
                        .toList(),
                rig.notes());
    }

    private static StringView string(String number, Rig.Assignment assignment, Instrument instrument) {
        return new StringView(
                Integer.parseInt(number),
                Optional.ofNullable(instrument.strings().get(number))
                        .map(open -> open.note().toString()),
                Optional.ofNullable(assignment.input()),
                Optional.ofNullable(assignment.sensitivity()),
                assignment.trimDecibels());
    }
}
