package rosinbook.web;

import static java.util.Map.entry;
import static rosinbook.web.Rights.Need.EVERYBODY;
import static rosinbook.web.Rights.Need.KEEP;
import static rosinbook.web.Rights.Need.OWN;
import static rosinbook.web.Rights.Need.READ;
import static rosinbook.web.Rights.Need.SHARE;
import static rosinbook.web.Rights.Need.SIGNED_IN;
import static rosinbook.web.Rights.Need.WRITE;

import java.util.Map;
import java.util.Set;

/**
 * Which right a route needs; the only place that says so, held against {@code x-right} in openapi.json. What is not named
 * here is read by whoever may read the notebook, and changed by whoever may write in it.
 */
final class Rights {
    /** What somebody must be allowed. */
    enum Need {
        /** Nothing. */
        EVERYBODY("none"),
        /** A share's token, which stands in the address. */
        SHARE("share"),
        /** To be a player, whichever. */
        SIGNED_IN("signed-in"),
        READ("read"),
        WRITE("write"),
        OWN("own"),
        /** To be the keeper. */
        KEEP("keep");

        private final String word;

        Need(String word) {
            this.word = word;
        }

        /** As {@code x-right} has it. */
        String word() {
            return word;
        }
    }

    private static final Map<String, Need> NAMED = Map.ofEntries(
            entry("GET /sign-in", EVERYBODY),
            entry("POST /sign-in", EVERYBODY),
            entry("POST /sign-out", EVERYBODY),
            entry("GET /join/{token}", EVERYBODY),
            entry("POST /join/{token}", EVERYBODY),
            entry("GET /healthz", EVERYBODY),
            entry("GET /robots.txt", EVERYBODY),
            entry("GET /s/{token}", SHARE),
            entry("GET /s/{token}/data", SHARE),
            entry("GET /api/openapi.json", SIGNED_IN),
            entry("GET /api/me", SIGNED_IN),
            entry("PUT /api/me/passphrase", SIGNED_IN),
            entry("GET /api/me/sessions", SIGNED_IN),
            entry("DELETE /api/me/sessions", SIGNED_IN),
            entry("DELETE /api/me/sessions/{session}", SIGNED_IN),
            entry("GET /api/players", SIGNED_IN),
            entry("GET /api/metrics", KEEP),
            entry("GET /api/backups", KEEP),
            entry("POST /api/backups", KEEP),
            entry("POST /api/players", KEEP),
            entry("DELETE /api/players/{player}", KEEP),
            entry("POST /api/players/{player}/invitation", KEEP),
            entry("POST /api/notebooks", SIGNED_IN),
            entry("PUT /api/notebooks/{notebook}", OWN),
            entry("POST /api/notebooks/{notebook}/open", READ),
            entry("PUT /api/notebooks/{notebook}/members/{player}", OWN),
            entry("DELETE /api/notebooks/{notebook}/members/{player}", OWN),
            entry("POST /api/recipes/{id}/preview", READ),
            entry("POST /api/bench/divider", READ),
            entry("POST /api/bench/probe", READ),
            entry("POST /api/bench/adapter", READ),
            entry("POST /api/bench/wiring", READ),
            entry("POST /api/bench/takes", READ),
            entry("POST /api/bench/levels", READ),
            entry("POST /api/bench/levels/compare", READ),
            entry("POST /api/bench/levels/{upload}", READ),
            entry("DELETE /api/bench/levels/{upload}", READ));

    private static final Set<String> OPEN_TO_ALL =
            Set.of("/sign-in", "/sign-out", "/healthz", "/robots.txt", "/styles/share.css", "/icon.svg");

    private Rights() {}

    /** @param route as it was registered, such as {@code /api/{kind}} */
    static Need of(String method, String route) {
        return NAMED.getOrDefault(method + " " + route, method.equals("GET") ? READ : WRITE);
    }

    /** Whether nobody is asked who they are at this address; for what stands behind it, its route's own right counts. */
    static boolean isOpenToAll(String path) {
        return OPEN_TO_ALL.contains(path) || path.startsWith("/s/") || path.startsWith("/join/");
    }
}
