package rosinbook.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.http.HttpException;
import org.eclipse.jetty.io.EofException;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/** What comes with a request, read up to its limit. */
final class Body {
    private static final int MOST_CAUSES = 20;

    private Body() {}

    /**
     * All of it.
     *
     * @throws PastLimit if it is longer, or came too slowly; a length that was announced may be wrong, or absent
     * @throws Problem if it ended early or cannot be read
     */
    static byte[] whole(Context exchange, Limit limit) {
        try {
            InputStream body = exchange.bodyInputStream();
            byte[] bytes = body.readNBytes(limit.count() + 1);
            if (bytes.length > limit.count()) {
                throw new PastLimit(limit);
            }
            return bytes;
        } catch (IOException cutShort) {
            throw trouble(cutShort).orElseGet(Body::endedEarly);
        }
    }

    /**
     * Waits for what the exchange keeps by itself, as a form.
     *
     * @throws Problem if it came too slowly, ended early or cannot be read
     */
    static void arrive(Context exchange) {
        try {
            exchange.bodyAsBytes();
        } catch (RuntimeException problem) {
            throw problem;
        } catch (Exception cutShort) { // an IOException, which the exchange does not announce
            throw trouble(cutShort).orElseGet(Body::endedEarly);
        }
    }

    /**
     * Reads what nobody wants any more, within bounds: a browser that is still sending when the connection closes never
     * reads the answer.
     *
     * @see "RFC 9112, section 9.6"
     */
    static void readAway(Context exchange) {
        Optional<SentBody> sent = SentBody.of(exchange);
        boolean waitsForUs = exchange.header("Expect") != null;
        if (sent.isPresent() && (waitsForUs || !sent.get().isSwept(exchange.bodyInputStream()))) {
            exchange.header("Connection", "close");
        }
    }

    static Problem endedEarly() {
        return new Problem(400, "upload-cut-short", "This did not arrive whole", "It ended too early; send it again.");
    }

    /** What to answer if this was thrown because of how a request was sent; empty if it has other reasons. */
    static Optional<Problem> trouble(Throwable thrown) {
        Optional<Problem> trouble = Optional.empty();
        Throwable each = thrown;
        for (int depth = 0; each != null && depth < MOST_CAUSES; each = each.getCause(), depth++) {
            if (each instanceof PastLimit limit) {
                return Optional.of(PastLimits.problem(limit.limit(), limit.getMessage()));
            }
            if (each instanceof TimeoutException) {
                return Optional.of(PastLimits.problem(Limit.SILENCE_SECONDS, Limit.SILENCE_SECONDS.sentence()));
            }
            if (each instanceof EofException || each instanceof HttpException) {
                trouble = Optional.of(endedEarly());
            }
        }
        return trouble;
    }
}
