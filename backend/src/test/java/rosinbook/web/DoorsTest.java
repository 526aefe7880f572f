package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.jetty.server.Connector;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rosinbook.limit.Limit;

/** Requests as no decent client sends them: never a failure of ours, never a hang, and the next one is served. */
class DoorsTest {
    private static final Patience SHORT = new Patience(
            Duration.ofSeconds(2), Duration.ofSeconds(1), Duration.ofSeconds(1), Duration.ofSeconds(20), 300, 8, 2);

    private static final Patience PATIENT = new Patience(
            Duration.ofMinutes(5), Duration.ofMinutes(5), Duration.ofSeconds(1), Duration.ofSeconds(20), 300, 8, 2);

    private final Api api = new Api(SHORT);

    @AfterEach
    void stop() {
        assertEquals(200, api.get("/api/pieces").status(), "others are served");
        assertEquals(0, api.get("/api/pieces").items().size(), "nothing was written");
        api.close();
    }

    private static String get(String path, String... headers) {
        return "GET " + path + " HTTP/1.1\r\nHost: localhost\r\n" + String.join("\r\n", headers)
                + (headers.length == 0 ? "" : "\r\n") + "\r\n";
    }

    private static final String FORM =
            "POST /sign-in HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/x-www-form-urlencoded\r\n";
    private static final String ARCHIVE =
            "POST /api/import HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/zip\r\n";

    private static final String PIECE = "{\"content\":{\"title\":\"One\"}}";

    private static String post(String body, String... headers) {
        return "POST /api/pieces HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                + String.join("\r\n", headers) + "\r\n\r\n" + body;
    }

    /** The first answer to these bytes; fails if it is none of ours. */
    private RawHttp.Reply refused(String request) throws IOException {
        RawHttp.Reply reply = RawHttp.reply(api, request);
        assertTrue(reply.status() >= 400 && reply.status() < 500, reply.text());
        assertEquals("application/problem+json", reply.header("content-type"), reply.text());
        assertTrue(reply.header("content-security-policy").contains("default-src 'none'"), reply.text());
        assertEquals("nosniff", reply.header("x-content-type-options"), reply.text());
        assertFalse(reply.text().toLowerCase(java.util.Locale.ROOT).contains("jetty"), reply.text());
        return reply;
    }

    private void assertType(String type, String request) throws IOException {
        RawHttp.Reply reply = refused(request);
        assertTrue(reply.text().contains("\"type\":\"/problems/" + type + "\""), reply.text());
    }

    @Test
    void a_head_that_is_too_large_is_told_so() throws IOException {
        assertType("head-too-large", get("/api/pieces", "X-Long: " + "x".repeat(17_000)));
        assertType("head-too-large", get("/api/pieces", many("X-%d: " + "y".repeat(500), 40)));
        assertType("header-too-long", get("/api/pieces", "X-Long: " + "x".repeat(8_001)));
        assertType("too-many-headers", get("/api/pieces", many("X-%d: 1", 100)));
        assertType("address-too-long", get("/api/pieces?q=" + "x".repeat(17_000)));
        assertType("address-too-long", get("/" + "x".repeat(17_000)));
        assertType("query-too-long", get("/api/pieces?q=" + "x".repeat(8_000)));
        assertType("too-many-parameters", get("/api/pieces?" + "a=1&".repeat(40) + "a=1"));
        assertEquals(
                200,
                RawHttp.reply(api, get("/api/pieces", "X-Long: " + "x".repeat(8_000)))
                        .status());
        assertEquals(
                200, RawHttp.reply(api, get("/api/pieces", many("X-%d: 1", 99))).status());
        assertEquals(
                200, RawHttp.reply(api, get("/api/pieces?q=" + "x".repeat(190))).status());
        assertEquals(
                200,
                RawHttp.reply(api, get("/api/pieces?" + "a=1&".repeat(39) + "a=1"))
                        .status());
    }

    private static String[] many(String header, int count) {
        String[] headers = new String[count];
        for (int i = 0; i < count; i++) {
            headers[i] = header.formatted(i);
        }
        return headers;
    }

    /** RFC 9112: 3.2 (Host), 2.2 (line ends, white space), 6.1 and 6.3 (lengths that contradict each other), 5 (fields). */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "GET /api/pieces HTTP/1.1\r\n\r\n",
                "GET /api/pieces HTTP/1.1\r\nHost: localhost\r\nHost: evil.example\r\n\r\n",
                "GET /api/pieces HTTP/1.1\r\nHost : localhost\r\n\r\n",
                "GET /api/pieces HTTP/1.1\r\nHost: localhost\r\n X: folded\r\n\r\n",
                "GET /api/pieces HTTP/1.1\r\nHost: localhost\r\nno colon\r\n\r\n",
                "GET /api/pieces HTTP/1.1\r\nHost: localhost\r\nX: a\0b\r\n\r\n",
                "GET /api/pieces HTTP/9.9\r\nHost: localhost\r\n\r\n",
                "GET  HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET /api/%zz HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET /api/%00 HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET /api/%c0%ae HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET /api/../../etc/passwd HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET /api/..;/pieces HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET /api/pieces/a%2Fb HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "G\u00cbT /api/pieces HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "BREW /api/pieces HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "TRACE /api/pieces HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "POST /api/pieces HTTP/1.1\r\nHost: localhost\r\nContent-Length: -1\r\n\r\n",
                "POST /api/pieces HTTP/1.1\r\nHost: localhost\r\nContent-Length: 99999999999999999999\r\n\r\n",
                "POST /api/pieces HTTP/1.1\r\nHost: localhost\r\nContent-Length: 2, 3\r\n\r\n{}",
                "POST /api/pieces HTTP/1.1\r\nHost: localhost\r\nContent-Length: +2\r\n\r\n{}",
                "\u0016\u0003\u0001\u0002\0\u0001\0\u0001\r\n\r\n",
                "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n",
                "\0\0\0\r\n\r\n"
            })
    void what_is_no_request_is_refused_as_a_problem(String request) throws IOException {
        refused(request);
    }

    @Test
    void lengths_that_contradict_each_other_are_refused() throws IOException {
        refused(post(PIECE, "Content-Length: " + PIECE.length(), "Content-Length: 3"));
        refused(post("0\r\n\r\n", "Transfer-Encoding: chunked", "Content-Length: 5"));
        refused(post("0\r\n\r\n", "Transfer-Encoding: chunked", "Transfer-Encoding: identity"));
        refused(post("0\r\n\r\n", "Transfer-Encoding: xchunked"));
        refused(post("zz\r\n" + PIECE + "\r\n0\r\n\r\n", "Transfer-Encoding: chunked"));
        refused(post("fffffffff\r\n" + PIECE + "\r\n0\r\n\r\n", "Transfer-Encoding: chunked"));
        refused(post("-1\r\n" + PIECE + "\r\n0\r\n\r\n", "Transfer-Encoding: chunked"));
    }

    @Test
    void a_request_hidden_behind_another_is_not_taken_for_one() throws IOException {
        String hidden = "POST /api/example HTTP/1.1\r\nHost: localhost\r\nContent-Length: 0\r\n\r\n";
        String request =
                post("0\r\n\r\n" + hidden, "Content-Length: 5", "Transfer-Encoding: chunked", "Connection: close");
        String all = RawHttp.exchange(api, request);
        assertEquals(1, all.split("HTTP/1\\.1 \\d", -1).length - 1, all);
    }

    @Test
    void chunk_extensions_are_read_over_but_not_without_end() throws IOException {
        RawHttp.Reply fine = RawHttp.reply(api, post("2;a=b\r\n{}\r\n0\r\n\r\n", "Transfer-Encoding: chunked"));
        assertEquals(422, fine.status(), fine.text());
        RawHttp.Reply long_ = RawHttp.reply(
                api, post("2;a=" + "b".repeat(200_000) + "\r\n{}\r\n0\r\n\r\n", "Transfer-Encoding: chunked"));
        assertTrue(long_.status() >= 400 && long_.status() < 500, long_.text());
        RawHttp.Reply trailers = RawHttp.reply(
                api, post("2\r\n{}\r\n0\r\n" + "X: y\r\n".repeat(5_000) + "\r\n", "Transfer-Encoding: chunked"));
        assertTrue(trailers.status() >= 400 && trailers.status() < 500, trailers.text());
    }

    @Test
    void bare_line_feeds_are_refused_or_read_as_the_same_request() throws IOException {
        RawHttp.Reply reply = RawHttp.reply(api, "GET /api/pieces HTTP/1.1\nHost: localhost\n\n");
        assertTrue(reply.status() == 200 || reply.status() == 400, reply.text());
    }

    @Test
    void pipelined_requests_are_answered_in_order() throws IOException {
        String all = RawHttp.exchange(
                api,
                get("/api/pieces") + get("/api/nowhere") + get("/healthz") + get("/api/styles", "Connection: close"));
        List<String> statuses = new ArrayList<>();
        java.util.regex.Matcher found =
                java.util.regex.Pattern.compile("HTTP/1\\.1 (\\d+)").matcher(all);
        while (found.find()) {
            statuses.add(found.group(1));
        }
        assertEquals(List.of("200", "404", "200", "200"), statuses);
    }

    @Test
    void a_body_that_trickles_in_is_not_waited_for() throws Exception {
        try (Socket socket = RawHttp.open(api)) {
            socket.getOutputStream().write(post("", "Content-Length: 1000").getBytes(StandardCharsets.UTF_8));
            RawHttp.Reply reply = trickle(socket, 100);
            assertEquals(408, reply.status(), reply.text());
            assertTrue(reply.text().contains("/problems/sending-took-too-long"), reply.text());
        }
    }

    @Test
    void a_form_and_an_upload_that_trickle_in_are_not_waited_for() throws Exception {
        for (String head : List.of(
                "POST /sign-in HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/x-www-form-urlencoded\r\n",
                "POST /api/bench/levels HTTP/1.1\r\nHost: localhost\r\nContent-Type: audio/wav\r\n",
                "POST /api/bench/levels HTTP/1.1\r\nHost: localhost\r\nContent-Type: multipart/form-data; boundary=x\r\n",
                "POST /api/blobs HTTP/1.1\r\nHost: localhost\r\nContent-Type: audio/midi\r\n",
                "POST /api/import HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/zip\r\n")) {
            try (Socket socket = RawHttp.open(api)) {
                socket.getOutputStream()
                        .write((head + "Content-Length: 5000\r\n\r\n").getBytes(StandardCharsets.UTF_8));
                RawHttp.Reply reply = trickle(socket, 100);
                assertEquals(408, reply.status(), head + reply.text());
                assertTrue(reply.text().contains("/problems/sending-took-too-long"), head + reply.text());
            }
        }
    }

    /** A byte now and then, until there is an answer. */
    private static RawHttp.Reply trickle(Socket socket, int millis) throws Exception {
        InputStream answer = socket.getInputStream();
        for (int i = 0; i < 200 && answer.available() == 0; i++) {
            try {
                socket.getOutputStream().write('x');
            } catch (IOException closed) {
                break;
            }
            Thread.sleep(millis);
        }
        return RawHttp.Reply.read(answer);
    }

    @Test
    void silence_in_the_middle_of_a_body_is_not_waited_out() throws IOException {
        RawHttp.Reply reply = RawHttp.reply(api, post("{\"content\":", "Content-Length: 1000"));
        assertEquals(408, reply.status(), reply.text());
        assertTrue(reply.text().contains("/problems/nothing-came"), reply.text());
    }

    @Test
    void silence_in_the_middle_of_a_form_or_an_archive_is_told_too() throws IOException {
        for (String head : List.of(FORM, ARCHIVE)) {
            RawHttp.Reply reply = RawHttp.reply(api, head + "Content-Length: 1000\r\n\r\nname=");
            assertEquals(408, reply.status(), reply.text());
            assertTrue(reply.text().contains("/problems/nothing-came"), reply.text());
        }
    }

    @Test
    void a_form_or_an_archive_that_is_cut_short_is_told_so() throws IOException {
        for (String head : List.of(FORM, ARCHIVE)) {
            try (Socket socket = RawHttp.open(api)) {
                socket.getOutputStream()
                        .write((head + "Content-Length: 1000\r\n\r\nname=").getBytes(StandardCharsets.UTF_8));
                socket.shutdownOutput();
                RawHttp.Reply reply = RawHttp.Reply.read(socket.getInputStream());
                assertEquals(400, reply.status(), reply.text());
                assertTrue(reply.text().contains("/problems/upload-cut-short"), reply.text());
            }
        }
    }

    @Test
    void a_body_cut_short_writes_nothing() throws IOException {
        for (String piece : List.of(PIECE, "", "{")) {
            try (Socket socket = RawHttp.open(api)) {
                socket.getOutputStream()
                        .write(post(piece, "Content-Length: " + (PIECE.length() + 1))
                                .getBytes(StandardCharsets.UTF_8));
                socket.shutdownOutput();
                RawHttp.Reply reply = RawHttp.Reply.read(socket.getInputStream());
                assertTrue(reply.status() == 0 || reply.status() == 400, reply.text());
            }
        }
    }

    @Test
    void those_who_send_slowly_keep_nobody_from_reading() throws IOException {
        List<Socket> slow = new ArrayList<>();
        try (Api busy = new Api(PATIENT)) {
            for (int i = 0; i < PATIENT.bodies(); i++) {
                slow.add(slowlySending(busy));
            }
            RawHttp.Reply reply = refusedBeside(slow, busy);
            assertTrue(reply.text().contains("/problems/" + Limit.BODIES_AT_ONCE.type()), reply.text());
            assertEquals("5", reply.header("retry-after"));
            assertEquals(200, busy.get("/api/pieces").status());
            for (Socket socket : slow) {
                socket.close();
            }
            await(() -> busy.post("/api/pieces", "{}").status() == 422);
        }
    }

    private static Socket slowlySending(Api api) throws IOException {
        Socket socket = RawHttp.open(api);
        socket.getOutputStream().write(post("{", "Content-Length: 1000").getBytes(StandardCharsets.UTF_8));
        return socket;
    }

    /** The first refusal; a slow one that came while another was tried was refused itself, and is sent again. */
    private static RawHttp.Reply refusedBeside(List<Socket> slow, Api busy) throws IOException {
        long end = System.nanoTime() + Duration.ofSeconds(60).toNanos();
        RawHttp.Reply reply = RawHttp.reply(busy, post("{}", "Content-Length: 2"));
        while (reply.status() != 503) {
            assertTrue(System.nanoTime() < end, "it never came true");
            for (int i = 0; i < slow.size(); i++) {
                if (slow.get(i).getInputStream().available() > 0) {
                    slow.get(i).close();
                    slow.set(i, slowlySending(busy));
                }
            }
            reply = RawHttp.reply(busy, post("{}", "Content-Length: 2"));
        }
        return reply;
    }

    /** A condition that comes true soon. */
    private interface Condition {
        boolean holds() throws IOException;
    }

    private static void await(Condition condition) throws IOException {
        long end = System.nanoTime() + Duration.ofSeconds(60).toNanos();
        while (!condition.holds()) {
            assertTrue(System.nanoTime() < end, "it never came true");
            Thread.onSpinWait();
        }
    }

    @Test
    void thousands_of_half_open_connections_keep_nobody_out() throws IOException {
        List<SocketChannel> halfOpen = new ArrayList<>();
        try (Api full = new Api(PATIENT)) {
            for (int i = 0; i < 3_000; i++) {
                SocketChannel channel = SocketChannel.open(RawHttp.address(full));
                halfOpen.add(channel);
                channel.write(ByteBuffer.wrap("GET /api/pieces HTTP/1.1\r\nHos".getBytes(StandardCharsets.UTF_8)));
                channel.configureBlocking(false);
                if (i % 500 == 499) {
                    assertEquals(200, RawHttp.reply(full, get("/api/pieces")).status());
                }
            }
            await(() -> open(halfOpen) <= PATIENT.connections());
            assertTrue(open(halfOpen) > PATIENT.connections() / 2, "no more are closed than is needed");
            assertEquals(200, RawHttp.reply(full, get("/api/pieces")).status());
        } finally {
            for (SocketChannel channel : halfOpen) {
                channel.close();
            }
        }
    }

    /** Long answers hold a thread until they are read, and nobody needs to sign in for some of them. */
    @Test
    void an_answer_that_is_not_read_is_not_waited_for() throws IOException {
        Patience patience = new Patience(
                PATIENT.silence(), Duration.ofSeconds(1), PATIENT.waiting(), PATIENT.computing(), 300, 8, 2);
        try (Api unread = new Api(patience);
                Socket socket = new Socket()) {
            socket.setReceiveBufferSize(1024);
            socket.connect(RawHttp.address(unread));
            Connector connector = unread.server.javalin().jettyServer().server().getConnectors()[0];
            await(() -> !connector.getConnectedEndPoints().isEmpty());
            // More than the system keeps for somebody who does not read.
            byte[] requests = get("/styles/share.css").repeat(3_000).getBytes(StandardCharsets.UTF_8);
            try {
                socket.getOutputStream().write(requests);
            } catch (IOException closed) {
                // soon enough
            }
            await(() -> connector.getConnectedEndPoints().isEmpty());
            assertEquals(200, unread.get("/styles/share.css").status());
        }
    }

    /** How many the server has not closed yet. */
    private static long open(List<SocketChannel> channels) {
        ByteBuffer answer = ByteBuffer.allocate(100);
        long open = 0;
        for (SocketChannel channel : channels) {
            try {
                open += channel.read(answer.clear()) == 0 ? 1 : 0;
            } catch (IOException reset) {
                // closed
            }
        }
        return open;
    }
}
