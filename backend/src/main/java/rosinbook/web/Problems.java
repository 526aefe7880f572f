package rosinbook.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.MethodNotAllowedResponse;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rosinbook.compare.ThreeWayMerge;
import rosinbook.limit.Limit;
import rosinbook.notebook.EditedMeanwhile;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.NoSuchBase;
import rosinbook.notebook.NoSuchRevision;
import rosinbook.notebook.NoSuchSheet;
import rosinbook.notebook.Pages;
import rosinbook.readout.PlaceReadout;
import rosinbook.store.ArchiveUnreadable;

/** Turns whatever a resource throws into an answer. */
final class Problems {
    private static final Logger LOG = LoggerFactory.getLogger(Problems.class);
    static final String MEDIA_TYPE = "application/problem+json";

    private Problems() {}

    static void register(RoutesConfig routes, Shelf shelf) {
        routes.exception(Problem.class, (problem, exchange) -> answer(exchange, problem));
        routes.exception(InvalidContent.class, (problem, exchange) -> answer(exchange, invalid(problem)));
        routes.exception(
                NoSuchSheet.class,
                (problem, exchange) -> answer(
                        exchange,
                        new Problem(404, "no-such-sheet", "There is no such thing here", problem.getMessage())));
        routes.exception(
                NoSuchRevision.class,
                (problem, exchange) -> answer(
                        exchange,
                        new Problem(404, "no-such-revision", "There is no such revision", problem.getMessage())));
        routes.exception(EditedMeanwhile.class, (problem, exchange) -> {
            exchange.header("ETag", Answers.etag(problem.current()));
            answer(exchange, shelf.notebook(exchange).look(pages -> edited(pages, problem)));
        });
        routes.exception(NoSuchBase.class, (problem, exchange) -> {
            exchange.header("ETag", Answers.etag(problem.current()));
            answer(
                    exchange,
                    new Problem(
                            412, "no-such-base", "There is no such revision to build on", problem.getMessage() + "."));
        });
        routes.exception(
                ArchiveUnreadable.class,
                (problem, exchange) -> answer(
                        exchange,
                        new Problem(
                                422, problem.trouble().type(), "This archive cannot be read", problem.getMessage())));
        DatabaseProblems.register(routes);
        StorageProblems.register(routes);
        routes.exception(
                IllegalArgumentException.class,
                (problem, exchange) -> answer(
                        exchange, new Problem(400, "bad-request", "The request is not right", problem.getMessage())));
        routes.exception(MethodNotAllowedResponse.class, (problem, exchange) -> {
            exchange.header("Allow", allowed(problem));
            answer(exchange, refused(problem));
        });
        routes.exception(HttpResponseException.class, (problem, exchange) -> answer(exchange, refused(problem)));
        routes.exception(Exception.class, (problem, exchange) -> {
            Optional<Problem> sending = Body.trouble(problem);
            if (sending.isPresent()) {
                answer(exchange, sending.get());
                return;
            }
            LOG.error("{} {} failed", exchange.method(), RouteName.of(exchange), problem);
            answer(exchange, ourFault());
        });
    }

    /** @see "RouterConfig.javaLangErrorHandler: what is no Exception goes by the mapping above" */
    static void answerError(HttpServletResponse response, Error error) {
        LOG.error("a request failed", error);
        response.setStatus(500);
        response.setHeader("Cache-Control", "no-store");
        response.setContentType(MEDIA_TYPE);
        try {
            response.getOutputStream().write(Answers.bytes(ourFault().json(response.getHeader(RequestId.HEADER))));
        } catch (IOException gone) {
            LOG.warn("nobody was there to read the answer", gone);
        }
    }

    static Problem ourFault() {
        return new Problem(
                500,
                "our-fault",
                "Something went wrong on our side",
                "What you wrote is still in front of you. If you were saving, look whether it is there already before you try"
                        + " again.");
    }

    static void answer(Context exchange, Problem problem) {
        Body.readAway(exchange);
        exchange.status(problem.status());
        exchange.header("Cache-Control", "no-store");
        String id = exchange.res().getHeader(RequestId.HEADER);
        boolean asPage = ProblemPage.isWanted(exchange.path(), exchange.header("Accept"));
        exchange.result(asPage ? ProblemPage.page(problem, id) : Answers.bytes(problem.json(id)));
        exchange.contentType(asPage ? ProblemPage.MEDIA_TYPE : MEDIA_TYPE);
    }

    private static Problem invalid(InvalidContent problem) {
        return problem.limit()
                .map(limit -> PastLimits.problem(limit, problem.getMessage()))
                .orElseGet(
                        () -> new Problem(422, "invalid-content", "This cannot be kept as it is", problem.getMessage()))
                .with("pointer", problem.pointer());
    }

    /** RFC 9110, section 15.5.6. */
    private static String allowed(MethodNotAllowedResponse problem) {
        return problem.getDetails().values().stream().findFirst().orElse("");
    }

    static Problem refused(HttpResponseException problem) {
        return switch (problem.getStatus()) {
            case 404 -> new Problem(404, "no-such-page", "There is no such address", "Check the address for a slip.");
            case 405 ->
                new Problem(
                        405,
                        "method-not-allowed",
                        "This address cannot do that",
                        "See /api/openapi.json for what it can.");
            case 413 -> PastLimits.problem(Limit.FORM_BYTES, Limit.FORM_BYTES.sentence());
            default ->
                new Problem(problem.getStatus(), "bad-request", "The request is not right", problem.getMessage());
        };
    }

    private static Problem edited(Pages pages, EditedMeanwhile edited) {
        Problem problem =
                new Problem(412, "edited-meanwhile", "Somebody else saved something here", edited.getMessage());
        ObjectNode details = problem.details();
        details.put("current", edited.current().number());
        details.set("currentContent", edited.current().json());
        details.set("merged", edited.merge().merged());
        ArrayNode conflicts = details.putArray("conflicts");
        PlaceReadout words = new PlaceReadout(
                SheetChanges.phrasing(pages, edited.current().content()),
                edited.current().json());
        for (ThreeWayMerge.Conflict conflict : edited.merge().conflicts()) {
            ObjectNode entry = conflicts.addObject();
            entry.put("pointer", conflict.at().toString());
            words.where(conflict.at()).forEach(entry.withArray("/where")::add);
            conflict.base().ifPresent(value -> entry.set("base", value));
            conflict.theirs().ifPresent(value -> entry.set("theirs", value));
            conflict.yours().ifPresent(value -> entry.set("yours", value));
            entry.put("baseText", words.text(conflict.at(), conflict.base()));
            entry.put("theirsText", words.text(conflict.at(), conflict.theirs()));
            entry.put("yoursText", words.text(conflict.at(), conflict.yours()));
        }
        return problem;
    }
}
