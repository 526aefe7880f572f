package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** HEAD gets what GET gets, but for the content (RFC 9110, section 9.3.2). */
class HeadTest {
    /** These belong to one answer, or to the wire. */
    private static final Set<String> OF_ONE_ANSWER = Set.of("date", "request-id", "connection", "keep-alive");

    private final Band band;

    HeadTest() throws IOException {
        band = new Band();
    }

    @AfterEach
    void close() throws IOException {
        band.close();
    }

    private static Map<String, List<String>> headers(Answer answer) {
        Map<String, List<String>> headers = new TreeMap<>();
        answer.headers().forEach((name, texts) -> headers.put(name.toLowerCase(Locale.ROOT), texts));
        headers.keySet().removeAll(OF_ONE_ANSWER);
        return headers;
    }

    private static Answer ask(Band.Caller caller, String method, String path) {
        return caller.send(method, path, new byte[0]);
    }

    private static void assertHeadIsLikeGet(Band.Caller caller, String path) {
        Answer before = ask(caller, "GET", path);
        Answer head = ask(caller, "HEAD", path);
        Answer after = ask(caller, "GET", path);
        assertEquals(before.status(), head.status(), path);
        assertEquals(headers(before).keySet(), headers(head).keySet(), path);
        assertEquals(0, head.bytes().length, path);
        // The metrics, and a recording that is being measured, tell something else each time.
        if (headers(before).equals(headers(after))) {
            assertEquals(headers(before), headers(head), path);
        }
    }

    @Test
    void every_operation_that_reads_answers_head_as_it_answers_get() {
        Samples samples = new Samples(band);
        int compared = 0;
        for (String operation : Description.operations()) {
            if (operation.startsWith("GET ")) {
                boolean isForKeeper = Rights.of("GET", operation.substring(4)) == Rights.Need.KEEP;
                Band.Player player = isForKeeper ? band.mira : band.ada;
                String path = samples.of(operation, player).path();
                assertEquals(200, ask(band.as(player), "HEAD", path).status(), operation);
                assertHeadIsLikeGet(band.as(player), path);
                compared++;
            }
        }
        assertTrue(compared > 30, compared + " operations");
    }

    @Test
    void what_get_is_refused_head_is_refused_too() {
        for (String path : List.of("/api/pieces", "/pieces", "/s/AAAAAAAAAAAAAAAAAAAAAA", "/join/nobody", "/api/")) {
            assertHeadIsLikeGet(band.stranger(), path);
        }
        for (String path : List.of(
                "/api/pieces/4f6c2b1e-0000-4000-8000-000000000000",
                "/api/unicorns",
                "/api/backups",
                "/nothing.js",
                "/nowhere",
                "/",
                "/app.js",
                "/robots.txt")) {
            assertHeadIsLikeGet(band.as(band.ada), path);
        }
        assertEquals(404, ask(band.as(band.ada), "HEAD", "/api/unicorns").status());
        assertEquals(401, ask(band.stranger(), "HEAD", "/api/pieces").status());
    }
}
