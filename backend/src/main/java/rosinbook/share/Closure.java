package rosinbook.share;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.Set;
import rosinbook.notebook.Content;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;

/** Everything one revision leads to, at the revisions that count now. */
final class Closure {
    private Closure() {}

    /** The revision itself and all it names, and what those name; references without a revision at their newest. */
    static Set<Reference> of(Pages pages, Revision root) {
        Set<Reference> found = new LinkedHashSet<>();
        Deque<Revision> open = new ArrayDeque<>();
        open.add(root);
        while (!open.isEmpty()) {
            Revision revision = open.remove();
            if (found.add(revision.reference()) && revision.kind() != Kind.LOG) {
                for (Content.Link link : revision.content().links().values()) {
                    target(pages, link.to()).ifPresent(open::add);
                }
            }
        }
        return found;
    }

    private static java.util.Optional<Revision> target(Pages pages, Reference to) {
        return to.revision() == null ? pages.newest(to.id()) : pages.revision(to.id(), to.revision());
    }
}
