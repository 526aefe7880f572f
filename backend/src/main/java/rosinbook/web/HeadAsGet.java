package rosinbook.web;

import io.javalin.http.Context;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * Hands HEAD on as GET, so that both get the same status and headers; Jetty looks at the request as it came, and leaves the
 * content out.
 *
 * @see "RFC 9110, section 9.3.2"
 */
final class HeadAsGet extends Handler.Wrapper {
    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        return super.handle(isHead(request) ? new AsGet(request) : request, response, callback);
    }

    /** Whether only the head of the answer was asked for, as for looking at something without opening it. */
    static boolean isHead(Context exchange) {
        return isHead(Request.unWrap(ServletContextRequest.getServletContextRequest(exchange.req())));
    }

    private static boolean isHead(Request request) {
        return HttpMethod.HEAD.is(request.getMethod());
    }

    private static final class AsGet extends Request.Wrapper {
        private AsGet(Request head) {
            super(head);
        }

        @Override
        public String getMethod() {
            return HttpMethod.GET.asString();
        }
    }
}
