package rosinbook.web;

import java.time.Duration;
import java.util.Set;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.RequestLog;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.NanoTime;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One log line and one measurement for every request that was answered, by whomever. */
final class Traffic implements RequestLog {
    private static final Logger LOG = LoggerFactory.getLogger("rosinbook.requests");
    private static final Set<String> METHODS = Set.of("GET", "HEAD", "POST", "PUT", "DELETE", "PATCH", "OPTIONS");

    private final Metrics metrics;

    Traffic(Metrics metrics) {
        this.metrics = metrics;
    }

    @Override
    public void log(Request request, Response response) {
        String method = METHODS.contains(request.getMethod()) ? request.getMethod() : "OTHER";
        String route = RouteName.of(request);
        Duration took = Duration.ofNanos(NanoTime.since(request.getBeginNanoTime()));
        metrics.answered(method, route, response.getStatus(), took);
        LOG.atInfo()
                .addKeyValue("method", method)
                .addKeyValue("route", route)
                .addKeyValue("status", response.getStatus())
                .addKeyValue("millis", took.toNanos() / 1000 / 1000.0)
                .addKeyValue("bytes", method.equals("HEAD") ? 0 : Response.getContentBytesWritten(response))
                .addKeyValue(RequestId.NAME, RequestId.of(request))
                .log("answered");
    }
}
