package rosinbook.web;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.server.NetworkConnector;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.handler.GracefulHandler;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Ends a server's work: nothing more is accepted, what was accepted is answered. Jetty's own way gives every open connection
 * a second of silence, which breaks off a slow upload or else waits for browsers that only keep a connection; this waits for
 * requests, not for connections.
 */
final class Stopping {
    /** For the slowest request. */
    static final long PATIENCE_SECONDS = 20;

    private static final Logger LOG = LoggerFactory.getLogger(Stopping.class);

    private final GracefulHandler requests = new GracefulHandler();
    private Server server;

    /** Watches a server's requests; before it starts. */
    void watch(Server watched) {
        server = watched;
        watched.insertHandler(requests);
    }

    /** Returns when every accepted request is answered, or patience has ended; then the server can be stopped. */
    void finish() {
        var answered = requests.shutdown(); // before the door closes, so that whoever finds it closed knows
        for (var connector : server.getConnectors()) {
            if (connector instanceof NetworkConnector listening) {
                listening.close();
            }
        }
        try {
            answered.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (TimeoutException late) {
            LOG.warn("{} requests were not answered in {} s", requests.getCurrentRequestCount(), PATIENCE_SECONDS);
        } catch (ExecutionException problem) {
            LOG.warn("requests could not be waited for", problem);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
