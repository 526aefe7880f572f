package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.Socket;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;
import rosinbook.store.RowCounts;

/** One more than is let in, at every door; heads, slow senders and archives have tests of their own. */
class PastLimitsTest {
    private final Api api = new Api();

    @AfterEach
    void nothing_was_written() {
        assertEquals(Collections.nCopies(4, 0), RowCounts.of(api.database.database()));
        api.close();
    }

    private static void assertPast(Limit limit, Answer answer) {
        JsonNode problem = answer.problem(PastLimits.status(limit.bounds()), limit.type());
        assertFalse(problem.path("detail").asText().isBlank());
    }

    private Answer send(String path, String type, byte[] body) {
        return api.send(api.to(path).header("Content-Type", type).POST(BodyPublishers.ofByteArray(body)));
    }

    private Answer piece(String fields) {
        return api.post("/api/pieces", "{'content':{'title':'One'," + fields + "}}");
    }

    @Test
    void json_that_holds_too_much() {
        assertPast(Limit.JSON_DEPTH, piece("'x':" + "[".repeat(39) + "]".repeat(39)));
        piece("'x':" + "[".repeat(38) + "]".repeat(38)).problem(422, "invalid-content");
        assertPast(Limit.JSON_TOKENS, piece("'x':[" + "1,".repeat(200_000) + "1]"));
        assertPast(Limit.NAME_LENGTH, piece("'" + "x".repeat(1_001) + "':1"));
        assertPast(Limit.NUMBER_LENGTH, piece("'tempoBpm':1" + "0".repeat(40)));
        assertPast(Limit.NUMBER_LENGTH, piece("'tempoBpm':0." + "1".repeat(40)));
        assertPast(Limit.TEXT_LENGTH, piece("'notes':'" + "x".repeat(20_001) + "'"));
        assertPast(Limit.TEXT_LENGTH, piece("'notes':'" + "x".repeat(300_000) + "'"));
        String styles = IntStream.range(0, 21).mapToObj(i -> "'s" + i + "'").collect(Collectors.joining(","));
        assertPast(Limit.ENTRIES, piece("'styles':[" + styles + "]"));
        // Each becomes two letters in lower case: i, and the dot above it.
        assertPast(Limit.TEXT_LENGTH, piece("'styles':['" + "\u0130".repeat(31) + "']"));
    }

    @Test
    void the_place_of_what_is_too_long_is_told() {
        assertEquals("/title", pointer("{'content':{'title':'" + "x".repeat(201) + "'}}"));
        assertEquals("/by", pointer("{'content':{'title':'One'},'by':'" + "x".repeat(101) + "'}"));
        assertEquals("/reason", pointer("{'content':{'title':'One'},'reason':'" + "x".repeat(1001) + "'}"));
    }

    private String pointer(String body) {
        return api.post("/api/pieces", body)
                .problem(422, Limit.TEXT_LENGTH.type())
                .path("pointer")
                .asText();
    }

    @Test
    void bodies_that_are_too_large() throws IOException {
        assertPast(Limit.FORM_BYTES, send("/sign-in", "application/x-www-form-urlencoded", new byte[10_001]));
        assertPast(Limit.MIDI_BYTES, send("/api/blobs", "audio/midi", new byte[(16 << 20) + 1]));
        assertPast(Limit.MIDI_BYTES, send("/api/bench/levels", "audio/midi", new byte[(16 << 20) + 1]));
        RawHttp.Reply reply = RawHttp.reply(
                api,
                "POST /api/bench/levels HTTP/1.1\r\nHost: localhost\r\nContent-Type: multipart/form-data; boundary=x\r\n"
                        + "Content-Length: " + (Limit.RECORDING_BYTES.most() + 1) + "\r\n\r\n--x");
        assertTrue(reply.text().contains("/problems/" + Limit.RECORDING_BYTES.type()), reply.text());
    }

    @Test
    void queries_that_ask_too_much() {
        assertPast(Limit.QUERY_TEXT, api.get("/api/pieces?q=" + "x".repeat(201)));
        assertPast(Limit.QUERY_TEXT, api.get("/api/search?q=" + "x".repeat(201)));
        assertPast(Limit.QUERY_TEXT, api.get("/api/exercise?strings=" + "x".repeat(1_001)));
        byte[] take = midi(1);
        String many = "a,".repeat(1_000) + "a";
        assertPast(Limit.REFUSED_REPAIRS, send("/api/bench/takes?refused=" + many, "audio/midi", take));
        send("/api/bench/takes?refused=" + many.substring(2), "audio/midi", take)
                .expect(200);
    }

    /** So many notes one after another, with running status: six bytes each. */
    private static byte[] midi(int notes) {
        byte[] note = {0, 0x45, 0x40, 1, 0x45, 0};
        return track(new byte[] {0, (byte) 0x90, 0x45, 0, 0, 0x45, 0}, note, notes);
    }

    private static byte[] track(byte[] start, byte[] event, int count) {
        int length = start.length + count * event.length + 4;
        ByteBuffer file = ByteBuffer.allocate(22 + length);
        file.put("MThd".getBytes(StandardCharsets.UTF_8)).putInt(6).putShort((short) 0);
        file.putShort((short) 1).putShort((short) 96);
        file.put("MTrk".getBytes(StandardCharsets.UTF_8)).putInt(length).put(start);
        for (int i = 0; i < count; i++) {
            file.put(event);
        }
        return file.put(new byte[] {0, (byte) 0xFF, 0x2F, 0}).array();
    }

    @Test
    void takes_that_hold_too_much() {
        assertPast(Limit.NOTES, send("/api/blobs", "audio/midi", midi(300_001)));
        assertPast(Limit.NOTES, send("/api/bench/takes", "audio/midi", midi(300_001)));
        byte[] bends = track(new byte[] {0, (byte) 0xE0, 0, 0x40}, new byte[] {0, 1, 0x40}, 2_000_000);
        assertPast(Limit.BENDS, send("/api/bench/takes", "audio/midi", bends));
    }

    @Test
    void a_take_of_as_many_notes_as_are_let_in_is_read() {
        assertEquals(300_000, TakeReading.GUESSING.read(midi(300_000)).notes().size());
    }

    @Test
    void recordings_that_hold_too_much() throws IOException {
        byte[] wav = Files.readAllBytes(Path.of("src/test/resources/published/levels/reel.wav"));
        ByteArrayOutputStream parts = new ByteArrayOutputStream();
        for (int i = 0; i < 25; i++) {
            parts.writeBytes(("--x\r\nContent-Disposition: form-data; name=\"f\"; filename=\"" + i
                            + ".wav\"\r\nContent-Type: audio/wav\r\n\r\nRIFF\r\n")
                    .getBytes(StandardCharsets.UTF_8));
        }
        parts.writeBytes("--x--\r\n".getBytes(StandardCharsets.UTF_8));
        assertPast(
                Limit.RECORDING_FILES,
                send("/api/bench/levels", "multipart/form-data; boundary=x", parts.toByteArray()));
        byte[] nine = wav.clone();
        nine[22] = 9;
        assertPast(Limit.CHANNELS, send("/api/bench/levels", "audio/wav", nine));
        String upload = send("/api/bench/levels?later=true", "audio/wav", wav)
                .expect(201)
                .json()
                .path("upload")
                .asText();
        String segment = "{'string':1,'fromSeconds':0,'toSeconds':1,'loudness':'soft'},";
        String segments = segment.repeat(1_000) + segment.substring(0, segment.length() - 1);
        assertPast(Limit.STROKES, api.post("/api/bench/levels/" + upload, "{'segments':[" + segments + "]}"));
    }

    @Test
    void only_so_many_arrive_at_once() throws IOException {
        List<Socket> slow = new ArrayList<>();
        try {
            for (int i = 0; i < Limit.UPLOADS_AT_ONCE.most(); i++) {
                slow.add(started("/api/bench/levels", "audio/wav"));
            }
            slow.add(started("/api/import", "application/zip"));
            send("/api/import", "application/zip", new byte[1]).problem(422, "unreadable-archive");
            for (int i = 1; i < Limit.ARCHIVES_ARRIVING_AT_ONCE.most(); i++) {
                slow.add(started("/api/import", "application/zip"));
            }
            awaitBusy(slow, "/api/import", "application/zip");
            assertPast(Limit.ARCHIVES_ARRIVING_AT_ONCE, send("/api/import", "application/zip", new byte[1]));
            awaitBusy(slow, "/api/bench/levels", "audio/wav");
            Answer refused = send("/api/bench/levels", "audio/wav", new byte[1]);
            assertPast(Limit.UPLOADS_AT_ONCE, refused);
            assertEquals("5", refused.header("Retry-After"));
        } finally {
            for (Socket socket : slow) {
                socket.close();
            }
        }
        await(() -> send("/api/import", "application/zip", new byte[1]).status() == 422);
    }

    private Socket started(String path, String type) throws IOException {
        Socket socket = RawHttp.open(api);
        String head = "POST " + path + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: " + type
                + "\r\nContent-Length: 100\r\n\r\nx";
        socket.getOutputStream().write(head.getBytes(StandardCharsets.UTF_8));
        return socket;
    }

    /** Until another is refused; a slow one that came while another was tried was refused itself, and is sent again. */
    private void awaitBusy(List<Socket> slow, String path, String type) throws IOException {
        long end = System.nanoTime() + Duration.ofSeconds(60).toNanos();
        while (send(path, type, new byte[1]).status() != 503) {
            assertTrue(System.nanoTime() < end, "it never came true");
            for (int i = 0; i < slow.size(); i++) {
                if (slow.get(i).getInputStream().available() > 0) {
                    slow.get(i).close();
                    slow.set(
                            i,
                            i < Limit.UPLOADS_AT_ONCE.most()
                                    ? started("/api/bench/levels", "audio/wav")
                                    : started("/api/import", "application/zip"));
                }
            }
        }
    }

    private static void await(java.util.function.BooleanSupplier condition) {
        long end = System.nanoTime() + Duration.ofSeconds(60).toNanos();
        while (!condition.getAsBoolean()) {
            assertTrue(System.nanoTime() < end, "it never came true");
        }
    }

    @Test
    void what_is_done_at_once_is_let_in_again_when_it_is_over() {
        AtOnce exports = new AtOnce(Limit.EXPORTS_AT_ONCE);
        exports.enter();
        exports.enter();
        assertEquals(
                Limit.EXPORTS_AT_ONCE,
                assertThrows(PastLimit.class, exports::enter).limit());
        exports.leave();
        exports.enter();
    }

    private static Patience hasty(Duration waiting, Duration computing) {
        return new Patience(Duration.ofSeconds(30), Duration.ofSeconds(30), waiting, computing, 100, 10, 2);
    }

    @Test
    void what_takes_too_long_to_compute_is_stopped() throws Exception {
        CountDownLatch interrupted = new CountDownLatch(1);
        try (Workbench bench = new Workbench(hasty(Duration.ofSeconds(5), Duration.ofSeconds(1)))) {
            PastLimit problem = assertThrows(
                    PastLimit.class,
                    () -> bench.compute(() -> {
                        while (!Thread.currentThread().isInterrupted()) {
                            Thread.onSpinWait();
                        }
                        interrupted.countDown();
                        return 1;
                    }));
            assertEquals(Limit.COMPUTING_SECONDS, problem.limit());
            assertTrue(interrupted.await(10, TimeUnit.SECONDS), "it goes on computing");
            assertEquals(2, bench.compute(() -> 2));
        }
    }

    @Test
    void who_waits_too_long_for_a_bench_is_told_so() throws Exception {
        AtomicBoolean goOn = new AtomicBoolean(true);
        List<Thread> busy = new ArrayList<>();
        try (Workbench bench = new Workbench(hasty(Duration.ofMillis(200), Duration.ofSeconds(60)))) {
            CountDownLatch started = new CountDownLatch(Workbench.SEATS);
            for (int i = 0; i < Workbench.SEATS; i++) {
                Thread thread = new Thread(() -> occupy(bench, started, goOn));
                thread.start();
                busy.add(thread);
            }
            assertTrue(started.await(10, TimeUnit.SECONDS));
            assertEquals(
                    Limit.WAITING_SECONDS,
                    assertThrows(PastLimit.class, () -> bench.compute(() -> 1)).limit());
            goOn.set(false);
            for (Thread thread : busy) {
                thread.join(10_000);
            }
            assertEquals(1, bench.compute(() -> 1));
        }
    }

    @Test
    void who_comes_when_too_many_wait_for_a_bench_is_refused_at_once() throws Exception {
        AtomicBoolean goOn = new AtomicBoolean(true);
        BlockingQueue<Object> told = new LinkedBlockingQueue<>();
        List<Thread> all = new ArrayList<>();
        try (Workbench bench = new Workbench(hasty(Duration.ofMinutes(5), Duration.ofMinutes(5)))) {
            CountDownLatch started = new CountDownLatch(Workbench.SEATS);
            for (int i = 0; i < Workbench.SEATS; i++) {
                all.add(new Thread(() -> occupy(bench, started, goOn)));
                all.get(i).start();
            }
            assertTrue(started.await(10, TimeUnit.SECONDS));
            for (int i = 0; i < Workbench.MOST_WAITING + 1; i++) {
                Thread waits = new Thread(() -> told.add(outcome(bench)));
                waits.start();
                all.add(waits);
            }
            PastLimit refused = assertInstanceOf(PastLimit.class, told.poll(20, TimeUnit.SECONDS));
            assertEquals(Limit.WAITING_SECONDS, refused.limit());
            assertTrue(refused.getMessage().contains("wait for a bench already"), refused.getMessage());
            goOn.set(false);
            for (int i = 0; i < Workbench.MOST_WAITING; i++) {
                assertEquals(1, told.poll(20, TimeUnit.SECONDS), "who waits has their turn");
            }
        } finally {
            goOn.set(false);
            for (Thread thread : all) {
                thread.join(10_000);
            }
        }
    }

    private static Object outcome(Workbench bench) {
        try {
            return bench.compute(() -> 1);
        } catch (IOException | RuntimeException problem) {
            return problem;
        }
    }

    @Test
    void a_seat_is_free_again_though_nobody_took_the_work() {
        Workbench closed = new Workbench(hasty(Duration.ofMillis(200), Duration.ofSeconds(5)));
        closed.close();
        for (int i = 0; i <= Workbench.SEATS; i++) {
            assertThrows(RejectedExecutionException.class, () -> closed.compute(() -> 1));
        }
    }

    @Test
    void a_seat_is_free_again_though_time_was_over_before_the_work_began() {
        try (Workbench bench = new Workbench(hasty(Duration.ofSeconds(10), Duration.ZERO))) {
            for (int i = 0; i < 500; i++) {
                if (outcome(bench) instanceof PastLimit late) {
                    assertEquals(Limit.COMPUTING_SECONDS, late.limit());
                }
            }
        }
    }

    private static void occupy(Workbench bench, CountDownLatch started, AtomicBoolean goOn) {
        try {
            bench.compute(() -> {
                started.countDown();
                while (goOn.get()) {
                    Thread.onSpinWait();
                }
                return 0;
            });
        } catch (IOException problem) {
            throw new java.io.UncheckedIOException(problem);
        }
    }
}
