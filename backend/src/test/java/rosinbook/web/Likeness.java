package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Whether two answers tell the same, but for the ids that were asked for and what is new with every answer. */
final class Likeness {
    private static final String UUID = "[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}";

    /** Connection tells of the wire alone: whether a body that was not read had arrived (RFC 9112, section 9.3). */
    private static final Set<String> NEW_EVERY_TIME = Set.of("date", "request-id", "connection");

    private Likeness() {}

    static String withoutIds(String text) {
        return text.replaceAll(UUID, "ID")
                .replaceAll("[0-9a-f]{64}", "SHA256")
                .replaceAll("\"requestId\":\"[0-9a-z]{10}\"", "\"requestId\":\"\"");
    }

    private static String headers(Answer answer) {
        return answer.headers().entrySet().stream()
                .filter(header -> !NEW_EVERY_TIME.contains(header.getKey().toLowerCase(Locale.ROOT)))
                .collect(Collectors.toMap(
                        header -> header.getKey().toLowerCase(Locale.ROOT),
                        header -> withoutIds(header.getValue().toString()),
                        (one, other) -> one + other,
                        TreeMap::new))
                .toString();
    }

    /** Same status, same headers, same body. */
    static void assertAlike(Answer one, Answer other, String where) {
        assertEquals(one.status(), other.status(), () -> where + ": " + one.text() + " " + other.text());
        assertEquals(headers(one), headers(other), where);
        assertEquals(withoutIds(one.text()), withoutIds(other.text()), where);
    }
}
