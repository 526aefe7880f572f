package rosinbook.web;

import java.time.Duration;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * Whoever reads an answer has as much time for it as a sender has for a body; then the connection is closed. A long answer
 * holds a thread until it is read, so those who read slowly would else keep everybody from being answered.
 */
final class Receivers extends Handler.Wrapper {
    private final Duration patience;

    /** @param patience for a whole answer, and longer the more of it has been written */
    Receivers(Duration patience) {
        this.patience = patience;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        TimedAnswer answer = new TimedAnswer(request, response, patience);
        Request.addCompletionListener(request, ended -> answer.end());
        return super.handle(request, answer, callback);
    }
}
