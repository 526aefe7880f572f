package rosinbook.readout;

import java.util.Optional;
import java.util.UUID;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Revision;

/** What sheets are called. */
@FunctionalInterface
public interface Titles {
    /** The newest title; empty if there is no such sheet. */
    Optional<String> of(UUID id);

    /** Looks titles up as they are needed. */
    static Titles in(Pages pages) {
        return id -> pages.newest(id).map(Revision::content).map(content -> content.title());
    }
}
