package rosinbook.web;

import io.javalin.config.RoutesConfig;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rosinbook.log.Logs;
import rosinbook.store.DatabaseBusy;
import rosinbook.store.DatabaseUnavailable;

/** Answers for a database that is away or busy; either passes by itself. */
final class DatabaseProblems {
    private static final Logger LOG = LoggerFactory.getLogger(DatabaseProblems.class);

    private DatabaseProblems() {}

    static void register(RoutesConfig routes) {
        routes.exception(DatabaseUnavailable.class, (problem, exchange) -> {
            LOG.warn("the database is away: {}", Logs.cause(problem));
            exchange.header("Retry-After", "5");
            Problems.answer(
                    exchange,
                    new Problem(
                            503,
                            "database-away",
                            "The notebook is out of reach just now",
                            "Its database does not answer. What you wrote is still in front of you; save it again in"
                                    + " a moment. If it was something new, look first whether it is there already."));
        });
        routes.exception(DatabaseBusy.class, (problem, exchange) -> {
            LOG.warn("a change was given up: {}", Logs.cause(problem));
            exchange.header("Retry-After", "1");
            Problems.answer(
                    exchange,
                    new Problem(
                            503,
                            "busy",
                            "Others are saving just now",
                            "Nothing was changed. What you wrote is still in front of you; save it again in a"
                                    + " moment."));
        });
    }
}
