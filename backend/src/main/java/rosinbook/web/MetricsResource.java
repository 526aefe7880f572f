package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** {@code /api/metrics}: what the service measures of itself, for its keeper and for whatever collects such figures. */
final class MetricsResource {
    static final String PATH = "/api/metrics";
    private static final String BEARER = "Bearer ";

    private final Metrics metrics;
    private final Optional<MetricsKey> key;

    MetricsResource(Metrics metrics, Optional<MetricsKey> key) {
        this.metrics = metrics;
        this.key = key;
    }

    void register(RoutesConfig routes) {
        routes.get(PATH, exchange -> {
            exchange.result(metrics.text().getBytes(StandardCharsets.UTF_8));
            exchange.contentType("text/plain; version=0.0.4; charset=utf-8");
        });
    }

    /**
     * Whether it asks for the metrics and brings the key for them. Then nobody needs to be signed in, and it does not matter
     * under which name it asks: no browser that another site deceives has the key.
     */
    boolean isOpenedByKey(Context exchange) {
        String brought = exchange.header("Authorization");
        return exchange.path().equals(PATH)
                && brought != null
                && brought.regionMatches(true, 0, BEARER, 0, BEARER.length()) // RFC 9110, section 11.1
                && key.filter(right -> right.is(brought.substring(BEARER.length())))
                        .isPresent();
    }
}
