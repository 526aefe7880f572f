package rosinbook.web;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.router.Endpoint;
import io.javalin.router.InternalRouter;
import io.javalin.router.ParsedEndpoint;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.server.Request;

/** What a request was for, without what it was about: {@code /s/{token}}, never the token. */
final class RouteName {
    private static final String ATTRIBUTE = RouteName.class.getName();
    private static final String NONE = "(none)";

    private RouteName() {}

    /** Keeps it with the request; called before anything can refuse it. */
    static void keep(Context exchange, InternalRouter routes) {
        Request request = ServletContextRequest.getServletContextRequest(exchange.req());
        Request.unWrap(request).setAttribute(ATTRIBUTE, find(exchange, routes));
    }

    private static String find(Context exchange, InternalRouter routes) {
        Endpoint matched = exchange.endpoints().matchedHttpEndpoint();
        if (matched != null) {
            return matched.path; // Javalin has looked it up for the handlers that stand before it
        }
        HandlerType method = exchange.method();
        ParsedEndpoint found = routes.findFirstHttpHandlerEntry(method, exchange.path());
        if (found != null) {
            return found.endpoint.path;
        }
        return method == HandlerType.GET && PagesResource.isOne(exchange.path()) ? "(page)" : NONE;
    }

    static String of(Context exchange) {
        return of(ServletContextRequest.getServletContextRequest(exchange.req()));
    }

    /** {@code (page)} for a page or a file of it, {@code (none)} for what has no address. */
    static String of(Request request) {
        return Request.unWrap(request).getAttribute(ATTRIBUTE) instanceof String route ? route : NONE;
    }
}
