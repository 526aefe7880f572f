package rosinbook.web;

import io.javalin.http.Context;
import java.util.Optional;
import java.util.UUID;
import rosinbook.access.Player;
import rosinbook.access.Right;
import rosinbook.access.Session;
import rosinbook.notebook.Notebook;

/**
 * Who asks, and which notebook they mean. Made before a request reaches its resource, and kept with the request.
 *
 * @param session empty for whoever sits at the computer itself
 * @param open the notebook that is meant; empty if it may not be read, or none may
 */
record Visit(Optional<Session> session, Optional<Open> open) {
    private static final String KEPT_AS = "rosinbook-visit";

    /** A notebook, and what may be done in it. */
    record Open(UUID notebookId, Right may) {}

    /** Empty for whoever sits at the computer itself. */
    Optional<Player> player() {
        return session.map(Session::player);
    }

    boolean isKeeper() {
        return player().map(Player::isKeeper).orElse(true);
    }

    /** @throws Problem if there is none */
    UUID notebookId() {
        return open.map(Open::notebookId).orElseThrow(Visit::noSuchNotebook);
    }

    /** A player who signed in is named as who they are, whatever they sent. */
    Notebook.Note signed(Notebook.Note note) {
        return player().map(player -> new Notebook.Note(player.name().text(), note.reason()))
                .orElse(note);
    }

    /** In one word for one notebook that is not there and one that may not be read: nobody can tell which. */
    static Problem noSuchNotebook() {
        return new Problem(
                404,
                "no-such-notebook",
                "There is no such notebook",
                "There is none, or it was not opened to you. Choose one of those you may read.");
    }

    void keepWith(Context exchange) {
        exchange.attribute(KEPT_AS, this);
    }

    /** Whether somebody looked who asks. */
    static boolean isKept(Context exchange) {
        return exchange.attribute(KEPT_AS) != null;
    }

    /** The visit of a request to an address that not everybody may reach. */
    static Visit of(Context exchange) {
        Visit visit = exchange.attribute(KEPT_AS);
        if (visit == null) {
            throw new IllegalStateException("nobody looked who asks for this address");
        }
        return visit;
    }
}
