package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/** How it is answered when something is too much: one type of problem for each limit. */
final class PastLimits {
    /** After how many seconds it is worth another try. */
    private static final String RETRY_SECONDS = "5";

    private PastLimits() {}

    static void register(RoutesConfig routes) {
        routes.exception(PastLimit.class, (problem, exchange) -> answer(exchange, problem));
    }

    private static void answer(Context exchange, PastLimit problem) {
        Limit.Bounds bounds = problem.limit().bounds();
        if (bounds == Limit.Bounds.BUSY) {
            exchange.header("Retry-After", RETRY_SECONDS);
        }
        if (bounds == Limit.Bounds.SENDING) {
            exchange.header("Connection", "close");
        }
        Problems.answer(exchange, problem(problem.limit(), problem.getMessage()));
    }

    static Problem problem(Limit limit, String message) {
        return new Problem(status(limit.bounds()), limit.type(), title(limit.bounds()), message);
    }

    static int status(Limit.Bounds bounds) {
        return switch (bounds) {
            case HEAD -> 431;
            case ADDRESS -> 414;
            case QUERY -> 400;
            case BODY -> 413;
            case CONTENT -> 422;
            case SENDING -> 408;
            case BUSY, CONNECTION -> 503;
        };
    }

    private static String title(Limit.Bounds bounds) {
        return switch (bounds) {
            case HEAD -> "The headers are too large";
            case ADDRESS -> "The address is too long";
            case QUERY -> "Too much is asked at once";
            case BODY -> "This is too large";
            case CONTENT -> "This is more than fits";
            case SENDING -> "This took too long to arrive";
            case BUSY, CONNECTION -> "Too much is going on at the moment";
        };
    }
}
