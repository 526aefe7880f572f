package rosinbook.web;

import io.javalin.http.Context;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Semaphore;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/**
 * Whoever sends a body has so much time for it, and only so many send at once; so those who send slowly keep nobody from
 * reading. Whoever has not signed in where players do has places of their own, and keeps no player from saving; no address
 * has all of those, and keeps others from signing in.
 */
final class Senders extends Handler.Wrapper {
    private final Patience patience;
    private final Listening listening;
    private final Semaphore players;
    private final Semaphore strangers;
    private final Map<String, Integer> strangersByAddress = new ConcurrentHashMap<>();
    private final Semaphore refused;

    Senders(Patience patience, Listening listening) {
        this.patience = patience;
        this.listening = listening;
        this.players = new Semaphore(patience.bodies());
        this.strangers = new Semaphore(patience.strangers());
        this.refused = new Semaphore(patience.strangers());
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        if (!bringsBody(request)) {
            return super.handle(request, response, callback);
        }
        SentBody body = new SentBody(request, patience.sending(), refused);
        Request.addCompletionListener(request, ended -> body.leave());
        return super.handle(body, response, callback);
    }

    private static boolean bringsBody(Request request) {
        return request.getLength() != 0
                && (request.getHeaders().contains(HttpHeader.CONTENT_LENGTH)
                        || request.getHeaders().contains(HttpHeader.TRANSFER_ENCODING));
    }

    /**
     * Gives a request that brings a body its place, once it is known who sends it.
     *
     * @throws PastLimit if there is none free
     */
    void enter(Context exchange, boolean isStranger) {
        SentBody.of(exchange).ifPresent(body -> {
            if (isStranger) {
                body.enter(placeOfStranger(ClientAddress.of(exchange, listening)));
            } else {
                body.enter(place(players, Limit.BODIES_AT_ONCE));
            }
        });
    }

    /** A place; run what is returned to let it go. */
    private static Runnable place(Semaphore places, Limit limit) {
        if (!places.tryAcquire()) {
            throw new PastLimit(limit);
        }
        return places::release;
    }

    private Runnable placeOfStranger(String address) {
        int here = strangersByAddress.merge(address, 1, Integer::sum);
        try {
            Limit.ONE_STRANGER_AT_ONCE.check(here);
            Runnable place = place(strangers, Limit.STRANGERS_AT_ONCE);
            return () -> {
                place.run();
                leave(address);
            };
        } catch (PastLimit problem) {
            leave(address);
            throw problem;
        }
    }

    /** An address of which nobody sends any more is forgotten. */
    private void leave(String address) {
        strangersByAddress.computeIfPresent(address, (same, here) -> here == 1 ? null : here - 1);
    }
}
