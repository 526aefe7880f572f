package rosinbook.web;

import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.slf4j.MDC;

/** Around everything else: the answer and whatever is logged on its way carry the request's id. */
final class RequestIds extends Handler.Wrapper {
    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        String id = RequestId.of(request);
        response.getHeaders().put(RequestId.HEADER, id);
        MDC.put(RequestId.NAME, id);
        try {
            return super.handle(request, response, callback);
        } finally {
            MDC.remove(RequestId.NAME);
        }
    }
}
