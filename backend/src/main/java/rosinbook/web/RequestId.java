package rosinbook.web;

import java.util.concurrent.ThreadLocalRandom;
import org.eclipse.jetty.server.Request;

/**
 * A request's own name, by which a player can quote it and the log can be searched: ten letters and digits that cannot be
 * mistaken for each other (Crockford's base 32). It is always made here; one that the client sends is not looked at.
 */
final class RequestId {
    /** Carried by every answer. */
    static final String HEADER = "Request-Id";

    /** What it is called in problems and in the log. */
    static final String NAME = "requestId";

    private static final String ATTRIBUTE = RequestId.class.getName();
    private static final String LETTERS = "0123456789abcdefghjkmnpqrstvwxyz";
    private static final int LENGTH = 10;

    private RequestId() {}

    /** The request's id; made when it is first asked for. */
    static String of(Request request) {
        Request accepted = Request.unWrap(request);
        if (accepted.getAttribute(ATTRIBUTE) instanceof String id) {
            return id;
        }
        String id = fresh();
        accepted.setAttribute(ATTRIBUTE, id);
        return id;
    }

    private static String fresh() {
        StringBuilder id = new StringBuilder(LENGTH);
        for (int i = 0; i < LENGTH; i++) {
            id.append(LETTERS.charAt(ThreadLocalRandom.current().nextInt(LETTERS.length())));
        }
        return id.toString();
    }
}
