package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import rosinbook.store.Database;

/** {@code /healthz}: whether the service and its database are awake; tells nothing else, to anybody. */
final class HealthResource {
    static final String PATH = "/healthz";

    private final Heartbeat heartbeat;

    HealthResource(Database database) {
        this.heartbeat = new Heartbeat(database::isAlive);
    }

    void register(RoutesConfig routes) {
        routes.get(PATH, this::health);
    }

    private void health(Context exchange) {
        boolean isAwake = heartbeat.beats();
        exchange.status(isAwake ? 200 : 503);
        exchange.header("Cache-Control", "no-store");
        exchange.result(isAwake ? "awake\n" : "the database does not answer\n");
    }
}
