package rosinbook.web;

import java.nio.ByteBuffer;
import java.time.Duration;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.BufferUtil;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;
import rosinbook.limit.Limit;

/** An answer whose connection is closed if it is not read in time. Safe for all threads. */
final class TimedAnswer extends Response.Wrapper {
    private final Duration patience;
    private final EndPoint connection;
    private final Scheduler scheduler;
    private long startNanos;
    private long bytes;
    private boolean isEnded;
    private Scheduler.Task closing;

    TimedAnswer(Request request, Response wrapped, Duration patience) {
        super(request, wrapped);
        this.patience = patience;
        this.connection = request.getConnectionMetaData().getConnection().getEndPoint();
        this.scheduler = request.getComponents().getScheduler();
    }

    @Override
    public void write(boolean last, ByteBuffer content, Callback callback) {
        begin(BufferUtil.length(content));
        super.write(last, content, callback);
    }

    private synchronized void begin(int length) {
        bytes += length;
        if (closing == null && !isEnded) {
            startNanos = System.nanoTime();
            closeAfter(patience);
        }
    }

    private void closeAfter(Duration time) {
        closing = scheduler.schedule(this::closeIfLate, time);
    }

    private void closeIfLate() {
        synchronized (this) {
            if (isEnded) {
                return;
            }
            Duration left =
                    patience.plusMillis(bytes * 1000 / Limit.BYTES_A_SECOND).minusNanos(System.nanoTime() - startNanos);
            if (left.toMillis() > 0) {
                closeAfter(left);
                return;
            }
        }
        connection.close();
    }

    /** The answer is on its way as a whole, or nobody wants it any more. */
    synchronized void end() {
        isEnded = true;
        if (closing != null) {
            closing.cancel();
        }
    }
}
