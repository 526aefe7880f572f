package rosinbook.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import rosinbook.notebook.Kind;
import rosinbook.notebook.NoSuchSheet;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Setlist;

/** {@code /api/tonight}: what the first page tells, on the player's day: the server may stand in another time zone. */
final class TonightResource {
    private static final LocalDate FIRST_DAY = LocalDate.of(1, 1, 1);
    private static final LocalDate LAST_DAY = LocalDate.of(9999, 12, 31);

    private final Shelf shelf;
    private final Clock clock;

    TonightResource(Shelf shelf, Clock clock) {
        this.shelf = shelf;
        this.clock = clock;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/tonight", this::tonight);
    }

    private void tonight(Context exchange) {
        LocalDate today = Requests.day(exchange, "day").orElseGet(() -> LocalDate.now(clock));
        Answers.json(exchange, shelf.notebook(exchange).look(pages -> tonight(pages, today)));
    }

    private static ObjectNode tonight(Pages pages, LocalDate today) {
        ObjectNode json = Answers.object();
        Optional<Revision> next = next(pages, today);
        LocalDate end = next.map(set -> ((Setlist) set.content()).date()).orElse(LAST_DAY);
        Optional<Revision> previous =
                pages.setlists(Set.of(true), FIRST_DAY, end, 1).stream().findFirst();
        put(json, "next", next);
        put(json, "previous", previous);
        if (next.isPresent() && previous.isPresent()) {
            comparison(pages, previous.get(), next.get()).ifPresent(told -> json.set("comparison", told));
        }
        put(json, "newestLog", newest(pages, Kind.LOG));
        put(json, "rig", newest(pages, Kind.RIGS));
        ObjectNode counts = json.putObject("counts");
        pages.counts().forEach((kind, count) -> counts.put(kind.path(), count));
        json.put("empty", counts.isEmpty());
        return json;
    }

    /** The first planned set from today on; if there is none, the last one that was planned and never marked as played. */
    private static Optional<Revision> next(Pages pages, LocalDate today) {
        return pages.firstPlanned(today).or(() -> pages.setlists(Set.of(false), FIRST_DAY, today, 1).stream()
                .findFirst());
    }

    private static Optional<ObjectNode> comparison(Pages pages, Revision was, Revision now) {
        try {
            return Optional.of(SetlistsResource.comparison(pages, was, now, false));
        } catch (NoSuchSheet somethingIsGone) {
            return Optional.empty();
        }
    }

    private static Optional<Revision> newest(Pages pages, Kind kind) {
        Pages.Query query = new Pages.Query(Optional.of(kind), "", Optional.empty(), Optional.empty(), 1);
        return pages.list(query).items().stream().findFirst();
    }

    private static void put(ObjectNode json, String name, Optional<Revision> revision) {
        revision.ifPresent(found -> json.set(name, Answers.envelope(found, true)));
    }
}
