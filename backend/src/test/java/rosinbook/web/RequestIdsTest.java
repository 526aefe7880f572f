package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rosinbook.log.LogFormat;
import rosinbook.testing.Logged;

/** A request can be quoted: by its answer, by the problem it met, and in the log. */
class RequestIdsTest {
    private static final Pattern HEADER = Pattern.compile("(?i)\r\nRequest-Id: ([0-9a-z]{10})\r\n");

    private final Api api = new Api();

    @AfterEach
    void stop() {
        api.close();
    }

    @Test
    void every_request_has_its_own() {
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < 200; i++) {
            assertTrue(ids.add(api.get("/healthz").header("Request-Id")));
        }
    }

    @Test
    void one_that_the_client_sends_is_not_taken() {
        for (String name : List.of("Request-Id", "X-Request-Id", "X-Correlation-Id", "traceparent")) {
            Answer answer = api.send(api.to("/api/nowhere").header(name, "0123456789"));
            assertNotEquals("0123456789", answer.header("Request-Id"));
            assertEquals(1, answer.headers().get("request-id").size());
        }
    }

    @Test
    void a_problem_shows_it() {
        for (Answer answer : List.of(
                api.get("/api/pieces/x"),
                api.get("/api/nowhere/at/all"),
                api.delete("/api/tonight"),
                api.post("/api/pieces", "{'content':{}}"),
                api.send(api.to("/api/pieces").header("Host", "evil.example")),
                api.send(api.to("/api/pieces").POST(BodyPublishers.ofString("{}"))))) {
            String type = answer.json().path("type").asText().replace("/problems/", "");
            answer.problem(answer.status(), type);
        }
    }

    @Test
    void what_jetty_refuses_by_itself_is_a_problem_too_and_shows_it() throws IOException {
        Map<String, Integer> refused = Map.of(
                "GET / HTTP/1.1\r\n\r\n",
                400,
                "GET / HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n",
                400,
                "nonsense\r\n\r\n",
                400,
                "GET / HTTP/7.7\r\nHost: localhost\r\n\r\n",
                400,
                "GET / HTTP/1.1\r\nHost: localhost\r\nBad\u0001Name: x\r\n\r\n",
                400,
                "GET /" + "x".repeat(17_000) + " HTTP/1.1\r\nHost: localhost\r\n\r\n",
                414,
                "GET / HTTP/1.1\r\nHost: localhost\r\nLong: " + "x".repeat(17_000) + "\r\n\r\n",
                431,
                "POST /api/pieces HTTP/1.1\r\nHost: localhost\r\nContent-Length: x\r\n\r\n",
                400,
                "GET /%zz HTTP/1.1\r\nHost: localhost\r\n\r\n",
                400);
        for (Map.Entry<String, Integer> request : refused.entrySet()) {
            String answer = RawHttp.exchange(api, request.getKey());
            String start =
                    request.getKey().substring(0, Math.min(60, request.getKey().length()));
            assertTrue(answer.startsWith("HTTP/1.1 " + request.getValue() + " "), start + " -> " + answer);
            Matcher header = HEADER.matcher(answer);
            assertTrue(header.find(), answer);
            assertTrue(answer.contains("Content-Type: application/problem+json"), answer);
            JsonNode problem = Api.json(answer.substring(answer.indexOf("\r\n\r\n") + 4));
            assertEquals(header.group(1), problem.path("requestId").asText());
            assertEquals(request.getValue().intValue(), problem.path("status").intValue());
            Description.assertFits(Api.json("{'$ref':'#/components/schemas/Problem'}"), problem, start);
        }
    }

    @Test
    void the_log_has_one_line_for_it_with_its_route_and_not_its_address() throws IOException {
        try (Logged logged = new Logged(LogFormat.JSON)) {
            String piece = api.create("pieces", "{'title':'One'}").id();
            Answer read = api.get("/api/pieces/" + piece + "?page=1");
            JsonNode line = logged.request(read.header("Request-Id"));
            assertEquals("GET", line.path("method").asText());
            assertEquals("/api/{kind}/{id}", line.path("route").asText());
            assertEquals(200, line.path("status").intValue());
            assertEquals(read.bytes().length, line.path("bytes").intValue());
            assertTrue(line.path("millis").doubleValue() > 0);
            assertEquals(
                    Set.of(
                            "time",
                            "level",
                            "logger",
                            "message",
                            "method",
                            "route",
                            "status",
                            "millis",
                            "bytes",
                            "requestId"),
                    names(line));
            Map<String, String> routes = Map.of(
                    "/s/AAAAAAAAAAAAAAAAAAAAAA",
                    "/s/{token}",
                    "/s/AAAAAAAAAAAAAAAAAAAAAA/data",
                    "/s/{token}/data",
                    "/",
                    "(page)",
                    "/pieces/" + piece,
                    "(page)",
                    "/styles/share.css",
                    "(page)",
                    "/api/nowhere/at/all/of/it",
                    "(none)",
                    "/nowhere",
                    "(none)");
            routes.forEach((address, route) -> {
                Answer answer = api.get(address);
                assertEquals(
                        route,
                        logged.request(answer.header("Request-Id"))
                                .path("route")
                                .asText(),
                        address);
            });
            Answer head = api.send(api.to("/api/pieces/" + piece).method("HEAD", BodyPublishers.noBody()));
            JsonNode headLine = logged.request(head.header("Request-Id"));
            assertEquals(
                    "HEAD /api/{kind}/{id}",
                    headLine.path("method").asText() + " "
                            + headLine.path("route").asText());
            assertEquals(0, headLine.path("bytes").intValue(), "nothing was sent but the head");
            Answer refused = api.send(api.to("/api/pieces/" + piece).header("Host", "evil.example"));
            assertEquals(
                    "/api/{kind}/{id}",
                    logged.request(refused.header("Request-Id")).path("route").asText());
            Matcher unreadable = HEADER.matcher(RawHttp.exchange(api, "MINE / HTTP/1.1\r\n\r\n"));
            assertTrue(unreadable.find());
            assertEquals(
                    "OTHER", logged.request(unreadable.group(1)).path("method").asText());
        }
    }

    private static Set<String> names(JsonNode line) {
        Set<String> names = new HashSet<>();
        line.fieldNames().forEachRemaining(names::add);
        return names;
    }

    @Test
    void bytes_are_those_of_the_body() throws IOException {
        try (Logged logged = new Logged(LogFormat.JSON)) {
            String answer =
                    RawHttp.exchange(api, "GET /nowhere HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
            Matcher header = HEADER.matcher(answer);
            assertTrue(header.find());
            String body = answer.substring(answer.indexOf("\r\n\r\n") + 4);
            assertEquals(
                    body.getBytes(StandardCharsets.UTF_8).length,
                    logged.request(header.group(1)).path("bytes").intValue());
        }
    }
}
