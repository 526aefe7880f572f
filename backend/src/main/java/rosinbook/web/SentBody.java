package rosinbook.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.server.Request;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/** A request that brings a body: its content ends in failure when the time is over. */
final class SentBody extends Request.Wrapper {
    /** How long what was refused may still take to come, and how long nothing of it may; and a second more for each MiB. */
    private static final Duration SWEEPING = Duration.ofSeconds(5);

    private static final String ATTRIBUTE = SentBody.class.getName();
    private static final long MOST_SWEPT = 32L << 20;
    private static final int SWEPT_A_SECOND = 1 << 20;

    private final Semaphore sweepers;
    private volatile long startNanos = System.nanoTime();
    private volatile Duration patience;
    private volatile int bytesASecond = Limit.BYTES_A_SECOND;
    private volatile long bytes;
    private volatile boolean isWhole;
    private Runnable letGo;

    /** @param sweepers as many bodies that were refused are read away at once */
    SentBody(Request wrapped, Duration patience, Semaphore sweepers) {
        super(wrapped);
        this.patience = patience;
        this.sweepers = sweepers;
        setAttribute(ATTRIBUTE, this);
    }

    /** Empty if the request brings none. */
    static Optional<SentBody> of(Context exchange) {
        Request request = Request.unWrap(ServletContextRequest.getServletContextRequest(exchange.req()));
        return Optional.ofNullable((SentBody) request.getAttribute(ATTRIBUTE));
    }

    /** Has a place among those who send from now on; letting it go is done as it says. */
    synchronized void enter(Runnable lettingGo) {
        letGo = lettingGo;
    }

    /** Lets the place go, if it has one. */
    synchronized void leave() {
        if (letGo != null) {
            letGo.run();
            letGo = null;
        }
    }

    @Override
    public Content.Chunk read() {
        Content.Chunk chunk = super.read();
        if (chunk == null || Content.Chunk.isFailure(chunk)) {
            return chunk;
        }
        if (chunk.isLast()) {
            isWhole = true;
            return chunk;
        }
        bytes += chunk.remaining();
        Duration allowed = patience.plusMillis(bytes * 1000 / bytesASecond);
        if (System.nanoTime() - startNanos <= allowed.toNanos()) {
            return chunk;
        }
        chunk.release();
        PastLimit slow = new PastLimit(Limit.SENDING_SECONDS);
        super.fail(slow);
        return Content.Chunk.from(slow, true);
    }

    /**
     * Reads away what nobody wants any more; others may send meanwhile.
     *
     * @return false if something of it may be left
     */
    boolean isSwept(InputStream body) {
        leave();
        if (isWhole) {
            return true;
        }
        if (getLength() > MOST_SWEPT || !sweepers.tryAcquire()) {
            return false;
        }
        EndPoint connection = getConnectionMetaData().getConnection().getEndPoint();
        long silence = connection.getIdleTimeout();
        try {
            bytes = 0;
            bytesASecond = SWEPT_A_SECOND;
            patience = SWEEPING;
            startNanos = System.nanoTime();
            connection.setIdleTimeout(Math.min(silence, SWEEPING.toMillis()));
            body.skip(MOST_SWEPT);
            return body.read() < 0;
        } catch (IOException | RuntimeException gone) {
            // Nobody is left to be told, or the body cannot be told from what follows it.
            return false;
        } finally {
            connection.setIdleTimeout(silence);
            sweepers.release();
        }
    }
}
