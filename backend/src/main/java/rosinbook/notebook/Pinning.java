package rosinbook.notebook;

import java.util.Map;

/** Holds references at exact revisions where a sheet must not move with what it names. */
final class Pinning {
    private Pinning() {}

    /**
     * Holds what must be exact: the gear of a rig, the starting point of a recipe, all of a set that was played, the rig of a
     * take.
     */
    static Content pinned(Pages pages, Content content) {
        if (content instanceof Setlist set && set.played()) {
            return PlayedSet.of(pages, set);
        }
        if (content instanceof Rig rig) {
            return rig.pinned(
                    pinned(pages, "/instrument", Kind.INSTRUMENTS, rig.instrument()),
                    pinned(pages, "/synth", Kind.SYNTHS, rig.synth()));
        }
        if (content instanceof Recipe recipe && recipe.follows() != null) {
            return recipe.following(pinned(pages, "/follows", Kind.RECIPES, recipe.follows()));
        }
        if (content instanceof TakeSheet take && take.rig() != null) {
            return take.pinned(pinned(pages, "/rig", Kind.RIGS, take.rig()));
        }
        return content;
    }

    /** Content sent again, with what it left open held as it was held then. */
    static Content pinnedAs(Content given, Content kept) {
        if (given instanceof Rig rig && kept instanceof Rig then) {
            return rig.pinned(pinnedAs(rig.instrument(), then.instrument()), pinnedAs(rig.synth(), then.synth()));
        }
        if (given instanceof Recipe recipe && recipe.follows() != null && kept instanceof Recipe then) {
            return recipe.following(pinnedAs(recipe.follows(), then.follows()));
        }
        if (given instanceof TakeSheet take && take.rig() != null && kept instanceof TakeSheet then) {
            return take.pinned(pinnedAs(take.rig(), then.rig()));
        }
        if (given instanceof Setlist set && set.played() && kept instanceof Setlist then) {
            Map<String, Content.Link> links = then.links();
            return PlayedSet.of(
                    set,
                    (place, kind, reference) -> links.containsKey(place)
                            ? pinnedAs(reference, links.get(place).to())
                            : reference);
        }
        return given;
    }

    private static Reference pinnedAs(Reference given, Reference then) {
        boolean same = then != null && given.revision() == null && given.id().equals(then.id());
        return same ? then : given;
    }

    static Reference pinned(Pages pages, String place, Kind kind, Reference reference) {
        if (reference.revision() != null) {
            return reference;
        }
        return pages.newest(reference.id())
                .filter(revision -> revision.kind() == kind)
                .map(Revision::reference)
                .orElseThrow(() -> new InvalidContent(place, "there is no such " + kind.singular()));
    }
}
