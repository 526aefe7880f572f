package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Other sites cannot use a player's browser against the notebook. */
class GuardTest {
    private final Api api = new Api();

    @AfterEach
    void stop() {
        api.close();
    }

    private String port() {
        return ":" + URI.create(api.address).getPort();
    }

    @Test
    void a_host_that_is_not_ours_is_refused() {
        // DNS rebinding: the name is the attacker's, the address is ours.
        for (String host : List.of(
                "evil.example",
                "evil.example" + port(),
                "127.0.0.1.evil.example",
                "localhost.evil.example",
                "0.0.0.0",
                "[::2]")) {
            api.send(api.to("/api/pieces").header("Host", host)).problem(403, "wrong-host");
            api.send(api.to("/s/AAAAAAAAAAAAAAAAAAAAAA").header("Host", host)).problem(403, "wrong-host");
        }
    }

    @Test
    void our_own_names_are_welcome() {
        for (String host :
                List.of("127.0.0.1" + port(), "localhost" + port(), "LOCALHOST" + port(), "[::1]" + port())) {
            api.send(api.to("/api/pieces").header("Host", host)).expect(200);
        }
    }

    @Test
    void a_request_without_a_host_or_with_two_is_refused() throws IOException {
        assertEquals(400, RawHttp.status(api, "GET /api/pieces HTTP/1.1"));
        assertEquals(400, RawHttp.status(api, "GET /api/pieces HTTP/1.1", "Host: localhost", "Host: evil.example"));
        assertEquals(403, RawHttp.status(api, "GET /api/pieces HTTP/1.0"));
        int absolute = RawHttp.status(api, "GET http://evil.example/api/pieces HTTP/1.1", "Host: localhost");
        assertTrue(absolute == 400 || absolute == 403, "a foreign name in the request line: " + absolute);
    }

    private HttpRequest.Builder newPiece() {
        return api.to("/api/pieces")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("{\"content\":{\"title\":\"One\"}}"));
    }

    @Test
    void an_origin_that_is_not_ours_is_refused_and_writes_nothing() {
        for (String origin : List.of(
                "http://evil.example",
                "https://127.0.0.1" + port(),
                "http://127.0.0.1:1",
                "http://localhost" + port() + "/path",
                "null",
                "http:opaque",
                "not an origin")) {
            api.send(newPiece().header("Origin", origin)).problem(403, "wrong-origin");
        }
        assertEquals(List.of(), api.get("/api/pieces").items());
        api.send(newPiece().header("Origin", api.address)).expect(201);
    }

    @Test
    void writing_that_the_browser_calls_cross_site_is_refused() {
        api.send(newPiece().header("Sec-Fetch-Site", "cross-site")).problem(403, "wrong-origin");
        api.send(newPiece().header("Sec-Fetch-Site", "same-site")).problem(403, "wrong-origin");
        api.send(newPiece().header("Sec-Fetch-Site", "none")).expect(201);
        api.send(newPiece().header("Sec-Fetch-Site", "same-origin")).expect(201);
        api.send(api.to("/api/pieces").header("Sec-Fetch-Site", "cross-site")).expect(200);
    }

    @Test
    void a_form_of_another_site_cannot_write() {
        // The three types a form or a simple request may have (Fetch standard, CORS-safelisted request headers).
        for (String type :
                List.of("text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x")) {
            for (String path : List.of("/api/pieces", "/api/shares", "/api/example", "/api/import")) {
                api.send(api.to(path).header("Content-Type", type).POST(BodyPublishers.ofString("{}")))
                        .problem(415, "wrong-media-type");
            }
        }
    }

    @Test
    void every_answer_carries_a_policy_without_inline_script_or_style() {
        for (String path : List.of("/api/pieces", "/api/nowhere", "/s/AAAAAAAAAAAAAAAAAAAAAA", "/api/export", "/")) {
            Answer answer = api.get(path);
            String policy = answer.header("Content-Security-Policy");
            List<String> directives =
                    Arrays.stream(policy.split(";")).map(String::strip).toList();
            assertTrue(directives.contains("default-src 'none'"), policy);
            assertTrue(directives.contains("script-src 'self'"), policy);
            assertTrue(directives.contains("style-src 'self'"), policy);
            assertTrue(directives.contains("base-uri 'none'"), policy);
            assertTrue(directives.contains("frame-ancestors 'none'"), policy);
            assertFalse(policy.contains("unsafe"), policy);
            assertEquals("nosniff", answer.header("X-Content-Type-Options"));
            assertEquals("same-origin", answer.header("Cross-Origin-Resource-Policy"));
            assertEquals("", answer.header("Access-Control-Allow-Origin"));
            assertEquals("", answer.header("Server"), "says nothing of what it is made of");
        }
        assertEquals("no-store", api.get("/api/pieces").header("Cache-Control"));
    }

    @Test
    void it_answers_on_the_loopback_address_alone() throws IOException {
        int port = URI.create(api.address).getPort();
        for (NetworkInterface network : Collections.list(NetworkInterface.getNetworkInterfaces())) {
            for (InetAddress address : Collections.list(network.getInetAddresses())) {
                if (!address.isLoopbackAddress()) {
                    assertFalse(answers(address, port), "answers on " + address);
                }
            }
        }
        assertTrue(answers(InetAddress.getByName("127.0.0.1"), port));
    }

    private static boolean answers(InetAddress address, int port) {
        try (Socket socket = new Socket()) {
            socket.connect(new InetSocketAddress(address, port), 2_000);
            return true;
        } catch (IOException refused) {
            return false;
        }
    }
}
