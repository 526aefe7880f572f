package rosinbook.notebook;

import java.util.Map;
import java.util.TreeMap;

/** A set as it was played: nothing in it can move any more. */
final class PlayedSet {
    private PlayedSet() {}

    /** Which revision something is held at. */
    interface Holding {
        Reference held(String place, Kind kind, Reference reference);
    }

    static Setlist of(Pages pages, Setlist set) {
        return of(set, (place, kind, reference) -> Pinning.pinned(pages, place, kind, reference));
    }

    static Setlist of(Setlist set, Holding holding) {
        Reference rig = set.rig() == null ? null : holding.held("/rig", Kind.RIGS, set.rig());
        Map<String, Setlist.Item> items = new TreeMap<>();
        set.items().forEach((id, item) -> items.put(id, held("/items/" + id, item, rig, holding)));
        return new Setlist(set.title(), set.date(), set.place(), Setlist.State.PLAYED, rig, items, set.notes());
    }

    private static Setlist.Item held(String place, Setlist.Item item, Reference setRig, Holding holding) {
        Reference recipe = item.recipe() == null ? null : holding.held(place + "/recipe", Kind.RECIPES, item.recipe());
        Reference rig = item.rig() == null ? setRig : holding.held(place + "/rig", Kind.RIGS, item.rig());
        return new Setlist.Item(item.order(), item.piece(), recipe, rig, item.note());
    }
}
