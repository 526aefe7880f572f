package rosinbook.web;

import io.javalin.http.Context;
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
 * reading. Whoever has not signed in where players do has places of their own, and keeps no player from saving.
 */
final class Senders extends Handler.Wrapper {
    private final Patience patience;
    private final Semaphore players;
    private final Semaphore strangers;
    private final Semaphore refused;

    Senders(Patience patience) {
        this.patience = patience;
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
        SentBody.of(exchange)
                .filter(body -> !body.takes(isStranger ? strangers : players))
                .ifPresent(body -> {
                    throw new PastLimit(isStranger ? Limit.STRANGERS_AT_ONCE : Limit.BODIES_AT_ONCE);
                });
    }
}
