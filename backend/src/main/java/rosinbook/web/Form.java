package rosinbook.web;

import io.javalin.http.Context;
import java.util.Optional;

/** A form as a browser sends it. */
final class Form {
    private static final String TYPE = "application/x-www-form-urlencoded";

    private final Context exchange;

    private Form(Context exchange) {
        this.exchange = exchange;
    }

    /**
     * A form that has come whole.
     *
     * @throws Problem if it has not, or is sent in another way, such as in parts, which are no fields and have no limit of
     *     their own
     */
    static Form of(Context exchange) {
        if (!Requests.mediaType(exchange).equals(TYPE)) {
            throw Requests.wrongMediaType("Send a form, with Content-Type: " + TYPE + ".");
        }
        Body.arrive(exchange);
        return new Form(exchange);
    }

    /** What was typed; empty if there is no such field. */
    String field(String name) {
        return Optional.ofNullable(exchange.formParam(name)).orElse("");
    }
}
