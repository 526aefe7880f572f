package rosinbook.web;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Something that cannot be done, as it is answered: problem details (RFC 9457). */
final class Problem extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final int status;
    private final String type;
    private final String title;
    private final transient ObjectNode details = JsonNodeFactory.instance.objectNode();

    /**
     * @param status HTTP status, 400 to 599
     * @param type last part of the problem's type, as in {@code /problems/no-such-sheet}
     * @param title what kind of problem it is, the same for every occurrence
     * @param detail what happened this time and what to do
     */
    Problem(int status, String type, String title, String detail) {
        super(detail);
        this.status = status;
        this.type = type;
        this.title = title;
    }

    /** The same with a further member. */
    Problem with(String name, String text) {
        details.put(name, text);
        return this;
    }

    ObjectNode details() {
        return details;
    }

    int status() {
        return status;
    }

    String title() {
        return title;
    }

    /** As it is answered to the request of this id. */
    ObjectNode json(String requestId) {
        ObjectNode json = JsonNodeFactory.instance
                .objectNode()
                .put("type", "/problems/" + type)
                .put("title", title)
                .put("status", status)
                .put("detail", getMessage())
                .put(RequestId.NAME, requestId);
        json.setAll(details);
        return json;
    }
}
