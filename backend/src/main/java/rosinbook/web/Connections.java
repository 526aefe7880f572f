package rosinbook.web;

import java.io.Closeable;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * Bounds open connections without turning newcomers away: when there are too many, the one that has waited longest for the
 * rest of a request is closed. A head that trickles in is not waited for longer than twice a body's patience. Safe for all
 * threads.
 */
final class Connections extends Handler.Wrapper implements Connection.Listener {
    private final Patience patience;
    /** Connections with no request in work, since when, the longest first. */
    private final Map<Connection, Long> waiting = new LinkedHashMap<>();

    private int working;

    Connections(Patience patience) {
        this.patience = patience;
    }

    @Override
    public void onOpened(Connection connection) {
        List<Connection> surplus = new ArrayList<>();
        long now = System.nanoTime();
        Duration most = patience.sending().multipliedBy(2);
        synchronized (waiting) {
            waiting.put(connection, now);
            for (Iterator<Map.Entry<Connection, Long>> each = waiting.entrySet().iterator(); each.hasNext(); ) {
                Map.Entry<Connection, Long> eldest = each.next();
                boolean tooMany = waiting.size() + working > patience.connections();
                if (!tooMany && now - eldest.getValue() <= most.toNanos() || eldest.getKey() == connection) {
                    break;
                }
                surplus.add(eldest.getKey());
                each.remove();
            }
        }
        surplus.forEach(Connections::close);
    }

    private static void close(Closeable connection) {
        try {
            connection.close();
        } catch (java.io.IOException closedAlready) {
            // that is what was wanted
        }
    }

    @Override
    public void onClosed(Connection connection) {
        synchronized (waiting) {
            waiting.remove(connection);
        }
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        Connection connection = request.getConnectionMetaData().getConnection();
        synchronized (waiting) {
            waiting.remove(connection);
            working++;
        }
        Request.addCompletionListener(request, ended -> {
            synchronized (waiting) {
                working--;
                if (connection.getEndPoint().isOpen()) {
                    waiting.put(connection, System.nanoTime());
                }
            }
        });
        return super.handle(request, response, callback);
    }
}
