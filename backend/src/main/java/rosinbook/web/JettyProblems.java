package rosinbook.web;

import java.nio.ByteBuffer;
import org.eclipse.jetty.http.HttpException;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpHeaderValue;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.io.QuietException;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rosinbook.limit.Limit;

/**
 * Answers in our words where none of our resources is asked: requests that are no HTTP, or too large a head, and any while
 * the server stops.
 */
final class JettyProblems extends ErrorHandler {
    private static final Logger LOG = LoggerFactory.getLogger(JettyProblems.class);

    /** After how many seconds a stopped server may be there again. */
    private static final String RETRY_SECONDS = "10";

    @Override
    public boolean handle(Request request, Response response, Callback callback) {
        Throwable cause = (Throwable) request.getAttribute(ERROR_EXCEPTION);
        int status = cause instanceof HttpException refused ? refused.getCode() : response.getStatus();
        if (status == HttpStatus.INTERNAL_SERVER_ERROR_500 && !(cause instanceof QuietException)) {
            LOG.atError()
                    .addKeyValue(RequestId.NAME, RequestId.of(request))
                    .setCause(cause)
                    .log("no route answered");
        }
        if (status == HttpStatus.SERVICE_UNAVAILABLE_503) {
            response.getHeaders().put(HttpHeader.CONNECTION, HttpHeaderValue.CLOSE);
            response.getHeaders().put(HttpHeader.RETRY_AFTER, RETRY_SECONDS);
        }
        if (HttpStatus.hasNoBody(status)) {
            callback.succeeded();
            return true;
        }
        write(request, response, problem(status), callback);
        return true;
    }

    @Override
    public boolean errorPageForMethod(String method) {
        return true;
    }

    static Problem problem(int status) {
        return switch (status) {
            case 408 -> PastLimits.problem(Limit.SILENCE_SECONDS, Limit.SILENCE_SECONDS.sentence());
            case 413 -> PastLimits.problem(Limit.JSON_BYTES, "This body is larger than anything that is read here.");
            case 414 -> PastLimits.problem(Limit.ADDRESS_BYTES, Limit.ADDRESS_BYTES.sentence());
            case 431 -> PastLimits.problem(Limit.HEAD_BYTES, Limit.HEAD_BYTES.sentence());
            case 501, 505 -> noHttp();
            case 503 ->
                new Problem(
                        status,
                        "stopping",
                        "The notebook is being closed",
                        "Try again in a moment; what you wrote is still in front of you.");
            default -> status >= 400 && status < 500 ? noHttp() : Problems.ourFault();
        };
    }

    private static Problem noHttp() {
        return new Problem(
                400,
                "bad-request",
                "The request is not right",
                "It is not HTTP as it is spoken here; send it with an ordinary browser or client.");
    }

    /** Writes a problem as the whole answer, with the headers that every answer has. */
    static void write(Request request, Response response, Problem problem, Callback callback) {
        String id = RequestId.of(request);
        response.setStatus(problem.status());
        Guard.headers(request.getHttpURI().getDecodedPath())
                .forEach((name, text) -> response.getHeaders().put(name, text));
        response.getHeaders().put(RequestId.HEADER, id);
        response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-store");
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, Problems.MEDIA_TYPE);
        response.write(true, ByteBuffer.wrap(Answers.bytes(problem.json(id))), callback);
    }
}
