package rosinbook.web;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.Timer;
import io.micrometer.core.instrument.binder.jvm.JvmGcMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmMemoryMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmThreadMetrics;
import io.micrometer.core.instrument.binder.system.FileDescriptorMetrics;
import io.micrometer.core.instrument.binder.system.ProcessorMetrics;
import io.micrometer.core.instrument.binder.system.UptimeMetrics;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import java.time.Duration;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import rosinbook.store.Database;

/**
 * What the service counts and measures of itself. Labels are routes, methods and statuses, of which there are only so many;
 * nothing that a player wrote becomes one.
 */
final class Metrics implements AutoCloseable {
    /** Upper ends of the histogram's buckets. */
    private static final Duration[] BUCKETS = {
        Duration.ofMillis(2),
        Duration.ofMillis(5),
        Duration.ofMillis(10),
        Duration.ofMillis(25),
        Duration.ofMillis(50),
        Duration.ofMillis(100),
        Duration.ofMillis(250),
        Duration.ofMillis(500),
        Duration.ofSeconds(1),
        Duration.ofMillis(2_500),
        Duration.ofSeconds(10)
    };

    static final Set<String> SAVES = Set.of(
            "POST /api/{kind}",
            "PUT /api/{kind}/{id}",
            "POST /api/{kind}/{id}/revisions/{number}/restore",
            "POST /api/setlists/{id}/played");
    static final Set<String> SHARE_OPENINGS = Set.of("GET /s/{token}", "GET /s/{token}/data");

    private final PrometheusMeterRegistry registry = new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
    private final JvmGcMetrics collections = new JvmGcMetrics();
    private final Map<Answered, Timer> timers = new ConcurrentHashMap<>();
    private final Counter saves = counter("rosinbook.saves", "Sheets saved, each as a new revision.");
    private final Counter shareOpenings = counter("rosinbook.share.openings", "Shares that were opened.");

    private record Answered(String method, String route, int status) {}

    Metrics(Database database) {
        Heartbeat heartbeat = new Heartbeat(database::isAlive);
        Gauge.builder("rosinbook.database.up", heartbeat, of -> of.beats() ? 1 : 0)
                .strongReference(true)
                .description("1 while the database answers, 0 while it does not.")
                .register(registry);
        pool(database, "active", "Connections to the database in use.", Database.Pool::active);
        pool(database, "idle", "Connections to the database that wait to be used.", Database.Pool::idle);
        pool(database, "waiting", "Requests that wait for a connection to the database.", Database.Pool::waiting);
        pool(database, "most", "Connections to the database at the most.", Database.Pool::most);
        new JvmMemoryMetrics().bindTo(registry);
        new JvmThreadMetrics().bindTo(registry);
        new ProcessorMetrics().bindTo(registry);
        new UptimeMetrics().bindTo(registry);
        new FileDescriptorMetrics().bindTo(registry);
        collections.bindTo(registry);
    }

    private Counter counter(String name, String description) {
        return Counter.builder(name).description(description).register(registry);
    }

    private void pool(Database database, String name, String description, ToDoubleFunction<Database.Pool> figure) {
        Gauge.builder("rosinbook.database.pool." + name, database, of -> figure.applyAsDouble(of.pool()))
                .description(description)
                .register(registry);
    }

    /**
     * A request was answered.
     *
     * @param method one of a few
     * @param route as {@link RouteName} tells it
     */
    void answered(String method, String route, int status, Duration took) {
        timers.computeIfAbsent(new Answered(method, route, status), this::timer).record(took);
        if (status < 300 && SAVES.contains(method + " " + route)) {
            saves.increment();
        }
        if (status < 300 && SHARE_OPENINGS.contains(method + " " + route)) {
            shareOpenings.increment();
        }
    }

    private Timer timer(Answered answered) {
        return Timer.builder("http.server.requests")
                .description("Requests from their first byte to the last of the answer.")
                .tag("method", answered.method())
                .tag("route", answered.route())
                .tag("status", Integer.toString(answered.status()))
                .serviceLevelObjectives(BUCKETS)
                .register(registry);
    }

    /** Everything, in Prometheus' text format 0.0.4. */
    String text() {
        return registry.scrape();
    }

    @Override
    public void close() {
        collections.close();
        registry.close();
    }
}
