package rosinbook.notebook;

import java.util.Map;
import java.util.TreeMap;

/** A set as it was played: nothing in it can move any more. */
final class PlayedSet {
    private PlayedSet() {}

    static Setlist of(Pages pages, Setlist set) {
        Reference rig = set.rig() == null ? null : Pinning.pinned(pages, "/rig", Kind.RIGS, set.rig());
        Map<String, Setlist.Item> items = new TreeMap<>();
        set.items().forEach((id, item) -> items.put(id, held(pages, "/items/" + id, item, rig)));
        return new Setlist(set.title(), set.date(), set.place(), Setlist.State.PLAYED, rig, items, set.notes());
    }

    private static Setlist.Item held(Pages pages, String place, Setlist.Item item, Reference setRig) {
        Reference recipe =
                item.recipe() == null ? null : Pinning.pinned(pages, place + "/recipe", Kind.RECIPES, item.recipe());
        Reference rig = item.rig() == null ? setRig : Pinning.pinned(pages, place + "/rig", Kind.RIGS, item.rig());
        return new Setlist.Item(item.order(), item.piece(), recipe, rig, item.note());
    }
}
