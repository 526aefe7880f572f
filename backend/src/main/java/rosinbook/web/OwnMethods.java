package rosinbook.web;

import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.MethodNotAllowedResponse;
import io.javalin.router.ParsedEndpoint;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;

/**
 * Some addresses, such as {@code /api/export}, also fit the pattern for sheets of any kind. What they cannot do themselves
 * is refused, instead of looked for among the kinds.
 */
final class OwnMethods implements Handler {
    private static final Set<String> METHODS = Set.of("GET", "POST", "PUT", "DELETE");

    private final Supplier<List<ParsedEndpoint>> routes;

    OwnMethods(Supplier<List<ParsedEndpoint>> routes) {
        this.routes = routes;
    }

    @Override
    public void handle(Context exchange) {
        Set<String> own = new TreeSet<>();
        for (ParsedEndpoint route : routes.get()) {
            if (METHODS.contains(route.endpoint.method.name())
                    && !route.endpoint.path.contains("{kind}")
                    && route.matches(exchange.path())) {
                own.add(route.endpoint.method.name());
            }
        }
        String asked = exchange.method().name();
        if (!own.isEmpty() && !own.contains(asked)) {
            throw new MethodNotAllowedResponse(
                    "This address cannot do that", Map.of("availableMethods", String.join(", ", own)));
        }
    }
}
