package rosinbook.web;

import io.javalin.http.Context;
import java.util.Comparator;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rosinbook.access.Access;
import rosinbook.access.NotebookEntry;
import rosinbook.access.Notebooks;
import rosinbook.access.Right;
import rosinbook.access.Session;
import rosinbook.store.DatabaseSheetStore;

/**
 * Lets a request in or says why not, and finds out which notebook it means: the one in its address, else the one it names
 * ({@code notebook} in the query, or the header {@code Rosinbook-Notebook}), else the one that is open. A name that is
 * empty or no id names none: never is another one written in than was meant.
 */
final class Door {
    private static final Pattern OF_NOTEBOOK = Pattern.compile("/api/notebooks/([^/]+)(?:/.*)?");
    private static final Pattern OF_MEMBER = Pattern.compile("/api/notebooks/[^/]+/members/([^/]+)");
    private static final String HEADER = "Rosinbook-Notebook";

    private final Access access;
    private final Notebooks notebooks;
    private final Listening listening;
    private final SessionCookie cookie;

    Door(Access access, Notebooks notebooks, Listening listening) {
        this.access = access;
        this.notebooks = notebooks;
        this.listening = listening;
        this.cookie = new SessionCookie(listening);
    }

    /**
     * Asks who comes; from elsewhere, a stranger gets no further than the sign-in page and what everybody may open.
     *
     * @throws Problem if they must sign in first
     */
    void enter(Context exchange) {
        if (Rights.isOpenToAll(exchange.path())) {
            return;
        }
        boolean isOfApi = exchange.path().startsWith("/api/");
        Optional<Session> session =
                listening.needsSignIn() ? cookie.token(exchange).flatMap(access::session) : Optional.empty();
        if (listening.needsSignIn() && session.isEmpty()) {
            sendToSignIn(exchange, isOfApi);
            return;
        }
        new Visit(session, isOfApi ? open(exchange, session) : Optional.empty()).keepWith(exchange);
    }

    /** Whether they have not said who they are, where players sign in. */
    boolean isStranger(Context exchange) {
        return listening.needsSignIn() && !Visit.isKept(exchange);
    }

    /** @throws Problem if the visitor has not the right that the route needs, or may not read the notebook it is about */
    void allow(Context exchange) {
        Rights.Need need = Rights.of(exchange.method().name(), RouteName.of(exchange));
        if (need != Rights.Need.EVERYBODY && need != Rights.Need.SHARE) {
            allow(need, Visit.of(exchange), exchange);
        }
    }

    private void sendToSignIn(Context exchange, boolean isOfApi) {
        if (isOfApi) {
            exchange.header("WWW-Authenticate", challenge());
            throw new Problem(
                    401,
                    "sign-in-needed",
                    "Sign in first",
                    "Open /sign-in in this browser; what you typed stays here.");
        }
        exchange.header("Cache-Control", "no-store");
        exchange.redirect(AskedPage.signIn(exchange));
        exchange.skipRemainingHandlers();
    }

    /**
     * How one signs in, as RFC 9110, section 15.5.2, wants it told. No registered scheme is a form and a cookie, so it is one
     * that browsers pass over and do not ask for a password in a window of their own.
     */
    private String challenge() {
        return "Cookie realm=\"Rosinbook\", form-action=\"/sign-in\", cookie-name=\"" + cookie.session() + "\"";
    }

    private Optional<Visit.Open> open(Context exchange, Optional<Session> session) {
        Optional<String> named = named(exchange);
        if (named.isPresent()) {
            return named.flatMap(text -> open(text, session));
        }
        return session.isPresent() ? lastOpen(session.get()) : Optional.of(openHere(exchange));
    }

    private static Optional<String> named(Context exchange) {
        Matcher inAddress = OF_NOTEBOOK.matcher(exchange.path());
        if (inAddress.matches()) {
            return Optional.of(inAddress.group(1));
        }
        return Optional.ofNullable(exchange.queryParam("notebook"))
                .or(() -> Optional.ofNullable(exchange.header(HEADER)));
    }

    private Optional<Visit.Open> open(String text, Optional<Session> session) {
        return Requests.uuidIn(text).flatMap(id -> open(id, session));
    }

    private Optional<Visit.Open> open(UUID notebookId, Optional<Session> session) {
        return notebooks.right(notebookId, session.map(Session::player)).map(may -> new Visit.Open(notebookId, may));
    }

    /** The notebook last opened in this session; else the first of the player's own, or that they may write in or read. */
    private Optional<Visit.Open> lastOpen(Session session) {
        return session.notebookId()
                .flatMap(id -> open(id, Optional.of(session)))
                .or(() -> notebooks.of(Optional.of(session.player())).stream()
                        .sorted(Comparator.comparing(NotebookEntry::may).reversed())
                        .findFirst()
                        .map(entry -> new Visit.Open(entry.id(), entry.may())));
    }

    /** At the computer itself: the notebook last opened in this browser, or the first of all. */
    private Visit.Open openHere(Context exchange) {
        return cookie.notebook(exchange)
                .flatMap(text -> open(text, Optional.empty()))
                .orElse(new Visit.Open(DatabaseSheetStore.ONLY_NOTEBOOK, Right.OWN));
    }

    private void allow(Rights.Need need, Visit visit, Context exchange) {
        switch (need) {
            case EVERYBODY, SHARE, SIGNED_IN -> {}
            case READ -> visit.notebookId();
            case WRITE -> {
                if (!may(visit, Right.WRITE)) {
                    throw mayOnlyRead(visit);
                }
            }
            case OWN -> {
                if (!may(visit, Right.OWN) && !isAboutOneself(exchange, visit)) {
                    throw new Problem(
                            403,
                            "owner-only",
                            "Only an owner of this notebook may do this",
                            "Ask " + owners(visit) + ".");
                }
            }
            case KEEP -> {
                if (!visit.isKeeper()) {
                    throw new Problem(
                            403, "keeper-only", "Only the keeper may do this", "Ask whoever set this Rosinbook up.");
                }
            }
        }
    }

    private static boolean may(Visit visit, Right right) {
        visit.notebookId();
        return visit.open().orElseThrow().may().includes(right);
    }

    private Problem mayOnlyRead(Visit visit) {
        return new Problem(
                403,
                "may-only-read",
                "You may only read this notebook",
                "You may read this notebook, not write in it. Ask " + owners(visit) + ".");
    }

    private String owners(Visit visit) {
        return notebooks
                .find(visit.notebookId(), visit.player())
                .map(NotebookEntry::owners)
                .filter(owners -> !owners.isEmpty())
                .map(owners -> String.join(" or ", owners))
                .orElse("an owner");
    }

    /** Whoever was let into a notebook may leave it. */
    private static boolean isAboutOneself(Context exchange, Visit visit) {
        Matcher member = OF_MEMBER.matcher(exchange.path());
        return exchange.method().name().equals("DELETE")
                && member.matches()
                && visit.player()
                        .filter(player -> Requests.uuidIn(member.group(1))
                                .filter(player.id()::equals)
                                .isPresent())
                        .isPresent();
    }
}
