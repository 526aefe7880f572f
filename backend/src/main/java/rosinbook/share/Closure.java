package rosinbook.share;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;

/** Everything one revision leads to, at the revisions that count now. */
final class Closure {
    private Closure() {}

    /** The revision itself and all it names, and what those name; references without a revision at their newest. */
    static Set<Reference> of(Pages pages, Revision root) {
        Set<Reference> found = new LinkedHashSet<>();
        List<Revision> level = List.of(root);
        while (!level.isEmpty()) {
            Set<Reference> named = new LinkedHashSet<>();
            for (Revision revision : level) {
                if (found.add(revision.reference())) {
                    revision.content().links().values().forEach(link -> named.add(link.to()));
                }
            }
            pages.fetch(named);
            level = named.stream().flatMap(to -> target(pages, to).stream()).toList();
        }
        return found;
    }

    private static Optional<Revision> target(Pages pages, Reference to) {
        return to.revision() == null ? pages.newest(to.id()) : pages.revision(to.id(), to.revision());
    }
}
