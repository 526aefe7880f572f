package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rosinbook.limit.Limit;

/** Whoever is not signed in and sends slowly keeps no player from saving. */
class SendersTest {
    private Band band;
    private final List<Socket> slow = new ArrayList<>();

    @BeforeEach
    void open() throws IOException {
        band = new Band(true);
    }

    @AfterEach
    void close() throws IOException {
        for (Socket socket : slow) {
            socket.close();
        }
        band.close();
    }

    /** The beginning of a body, and nothing more. */
    private Socket started(String path, String type) throws IOException {
        return started(path, type, "198.51.100.7");
    }

    private Socket started(String path, String type, String from) throws IOException {
        Socket socket = new Socket(
                InetAddress.getLoopbackAddress(), band.server.javalin().port());
        slow.add(socket);
        socket.setSoTimeout(20_000);
        String head = "POST " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: " + type + "\r\nX-Forwarded-For: "
                + from + "\r\nContent-Length: 1000\r\n\r\n{";
        socket.getOutputStream().write(head.getBytes(StandardCharsets.UTF_8));
        return socket;
    }

    private void assertAdaSaves() {
        band.as(band.ada)
                .post("/api/pieces", "{'content':{'title':'One'},'by':'','reason':''}")
                .expect(201);
    }

    @Test
    void who_is_refused_holds_no_place_and_is_not_waited_for_long() throws IOException {
        for (int i = 0; i < Limit.BODIES_AT_ONCE.most() + 1; i++) {
            started("/api/pieces", "application/json");
        }
        assertAdaSaves();
        long start = System.nanoTime();
        for (Socket socket : slow) {
            RawHttp.Reply reply = RawHttp.Reply.read(socket.getInputStream());
            assertEquals(401, reply.status(), reply.text());
            assertEquals("close", reply.header("connection"), reply.text());
        }
        assertTrue(System.nanoTime() - start < Duration.ofSeconds(20).toNanos(), "waited too long");
        assertAdaSaves();
    }

    @Test
    void those_who_are_not_signed_in_have_few_places_of_their_own() throws IOException {
        Map<String, String> form = Map.of("name", "Ada", "passphrase", band.ada.passphrase);
        long end = System.nanoTime() + Duration.ofSeconds(120).toNanos();
        Answer answer = band.stranger().form("/sign-in", form);
        while (answer.status() != 503) {
            started("/sign-in", "application/x-www-form-urlencoded", "198.51.100." + slow.size());
            assertTrue(System.nanoTime() < end, "it never came true");
            answer = band.stranger().form("/sign-in", form);
        }
        answer.problem(503, Limit.STRANGERS_AT_ONCE.type());
        assertEquals("5", answer.header("Retry-After"));
        assertTrue(slow.size() >= Limit.STRANGERS_AT_ONCE.most(), slow.size() + " were enough");
        assertAdaSaves();
        for (Socket socket : slow) {
            socket.close();
        }
        while (band.stranger().form("/sign-in", form).status() != 303) {
            assertTrue(System.nanoTime() < end, "it never came true");
        }
    }

    @Test
    void one_address_takes_only_a_few_of_them_and_others_sign_in() throws IOException {
        Map<String, String> form = Map.of("name", "Ada", "passphrase", band.ada.passphrase);
        Band.Caller there = band.stranger().with("X-Forwarded-For", "2001:db8:1:2::1");
        Band.Caller elsewhere = band.stranger().with("X-Forwarded-For", "2001:db8:1:3::1");
        for (int i = 0; i < Limit.ONE_STRANGER_AT_ONCE.most(); i++) {
            started("/sign-in", "application/x-www-form-urlencoded", "2001:db8:1:2::2");
        }
        long end = System.nanoTime() + Duration.ofSeconds(20).toNanos();
        Answer answer = there.form("/sign-in", form);
        while (answer.status() != 503) {
            // One that came while another was tried was refused itself.
            started("/sign-in", "application/x-www-form-urlencoded", "2001:db8:1:2::3");
            assertTrue(System.nanoTime() < end, "it never came true");
            answer = there.form("/sign-in", form);
        }
        answer.problem(503, Limit.ONE_STRANGER_AT_ONCE.type());
        assertEquals("5", answer.header("Retry-After"));
        elsewhere.form("/sign-in", form).expect(303);
        for (Socket socket : slow) {
            socket.close();
        }
        while (there.form("/sign-in", form).status() != 303) {
            assertTrue(System.nanoTime() < end, "it never came true");
        }
    }

    /** A browser that is still sending when the connection closes never reads the answer. */
    @Test
    void a_stranger_with_a_large_recording_is_told_to_sign_in_and_may_go_on_asking() {
        for (int i = 0; i < 3; i++) {
            band.stranger()
                    .with("Content-Type", "audio/wav")
                    .send("POST", "/api/bench/levels", new byte[25 << 20])
                    .problem(401, "sign-in-needed");
        }
    }
}
