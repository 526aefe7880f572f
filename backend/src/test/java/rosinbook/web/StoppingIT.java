package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.ConnectException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.store.Database;
import rosinbook.testing.RunningJar;

/** The packaged program is asked to stop (SIGTERM) while slow requests are under way. */
class StoppingIT {
    /** 128 + 15: ended by SIGTERM, as a shell and a container's keeper read it. */
    private static final int ENDED_BY_SIGTERM = 143;

    private static final int PIECES = 160;

    @TempDir
    private Path folder;

    private static Socket connect(RunningJar program) throws IOException {
        Socket socket = new Socket();
        socket.setReceiveBufferSize(4096);
        socket.setSoTimeout(25_000);
        socket.connect(new InetSocketAddress(
                InetAddress.getLoopbackAddress(), URI.create(program.address()).getPort()));
        return socket;
    }

    private static void write(Socket socket, String text) throws IOException {
        socket.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
        socket.getOutputStream().flush();
    }

    /** The head of an answer; what follows is left to be read. */
    private static String head(InputStream in) throws IOException {
        StringBuilder head = new StringBuilder();
        for (int letter = in.read(); letter >= 0; letter = in.read()) {
            head.append((char) letter);
            if (head.toString().endsWith("\r\n\r\n")) {
                return head.toString();
            }
        }
        throw new AssertionError("the answer was cut short: " + head);
    }

    private static String upload(int length) {
        return "POST /api/pieces HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nContent-Length: "
                + length + "\r\n\r\n";
    }

    private static void pause(long millis) {
        LockSupport.parkNanos(Duration.ofMillis(millis).toNanos());
    }

    /** Returns when nobody listens any more. */
    private static void awaitRefusal(RunningJar program) {
        Instant end = Instant.now().plus(Duration.ofSeconds(15));
        while (Instant.now().isBefore(end)) {
            try {
                connect(program).close();
                pause(20);
            } catch (ConnectException refused) {
                return;
            } catch (IOException other) {
                pause(20);
            }
        }
        throw new AssertionError("new connections are still accepted");
    }

    /** Sheets that together do not fit into what the sockets hold: letters by chance, which a ZIP cannot make much smaller. */
    private void fill() {
        Random random = new Random(8017);
        try (Database database = Database.inFolder(folder);
                Server server = Server.start(database, 0, Clock.systemUTC())) {
            var client = java.net.http.HttpClient.newHttpClient();
            for (int i = 0; i < PIECES; i++) {
                String notes = random.ints(20_000, 0x4e00, 0x9fff)
                        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                        .toString();
                String body = "{\"content\":{\"title\":\"Piece " + i + "\",\"notes\":\"" + notes + "\"}}";
                var request = java.net.http.HttpRequest.newBuilder(URI.create(server.address() + "api/pieces"))
                        .header("Content-Type", "application/json")
                        .POST(java.net.http.HttpRequest.BodyPublishers.ofString(body))
                        .build();
                assertEquals(
                        201,
                        client.send(request, java.net.http.HttpResponse.BodyHandlers.discarding())
                                .statusCode());
            }
        } catch (IOException problem) {
            throw new java.io.UncheckedIOException(problem);
        } catch (InterruptedException interrupted) {
            throw new IllegalStateException(interrupted);
        }
    }

    private static int status(RunningJar program, String path) throws IOException {
        try (Socket socket = connect(program)) {
            write(socket, "GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n");
            return Integer.parseInt(head(socket.getInputStream()).split(" ")[1]);
        }
    }

    @Test
    void what_was_accepted_is_finished_and_nothing_more_is_accepted() throws Exception {
        fill();
        UUID id = UUID.randomUUID();
        String body = "{\"id\":\"" + id + "\",\"content\":{\"title\":\"Sent slowly\"}}";
        RunningJar program = RunningJar.serve(folder);
        try (Socket slow = connect(program);
                Socket reading = connect(program);
                Socket idle = connect(program)) {
            write(slow, upload(body.length()) + body.substring(0, 20));
            write(reading, "GET /api/export HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");
            InputStream export = new BufferedInputStream(reading.getInputStream());
            String exportHead = head(export);
            assertTrue(exportHead.startsWith("HTTP/1.1 200 "), exportHead);
            write(idle, "GET /healthz HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");
            assertTrue(head(idle.getInputStream()).startsWith("HTTP/1.1 200 "));
            idle.getInputStream().readNBytes("awake\n".length());

            program.askToStop();
            awaitRefusal(program);

            write(idle, "GET /healthz HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");
            String late = head(idle.getInputStream());
            assertTrue(late.startsWith("HTTP/1.1 503 "), late);
            assertTrue(late.contains("Retry-After: ") && late.contains("Connection: close"), late);
            String problem = new String(idle.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertTrue(problem.contains("/problems/stopping"), problem);

            for (int i = 20; i < body.length(); i += 20) {
                pause(700);
                write(slow, body.substring(i, Math.min(i + 20, body.length())));
            }
            String saved = head(slow.getInputStream());
            assertTrue(saved.startsWith("HTTP/1.1 201 "), saved);

            assertEquals(PIECES, pieces(whole(exportHead, export)), "the export is whole");
            assertEquals(ENDED_BY_SIGTERM, program.exitStatus());
        }
        try (RunningJar again = RunningJar.serve(folder)) {
            assertEquals(200, status(again, "/api/pieces/" + id));
        }
    }

    /** A body of the length that its head tells, slowly at first; fails if it ends before its end. */
    private static byte[] whole(String head, InputStream in) throws IOException {
        Matcher length = Pattern.compile("(?i)\r\nContent-Length: (\\d+)").matcher(head);
        assertTrue(length.find(), head);
        int left = Integer.parseInt(length.group(1));
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        while (left > 0) {
            byte[] block = in.readNBytes(Math.min(left, 8_192));
            assertTrue(block.length > 0, "the answer was cut short after " + whole.size() + " bytes");
            whole.writeBytes(block);
            left -= block.length;
            pause(whole.size() < 200_000 ? 5 : 0);
        }
        return whole.toByteArray();
    }

    private static long pieces(byte[] zip) throws IOException {
        long count = 0;
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (var entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                count += entry.getName().startsWith("sheets/pieces/") ? 1 : 0;
            }
        }
        return count;
    }

    @Test
    void with_nothing_to_finish_it_stops_at_once_though_a_browser_keeps_its_connection() throws Exception {
        RunningJar program = RunningJar.serve(folder);
        try (Socket kept = connect(program)) {
            write(kept, "GET /healthz HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");
            assertTrue(head(kept.getInputStream()).startsWith("HTTP/1.1 200 "));
            program.askToStop();
            assertEquals(ENDED_BY_SIGTERM, program.exitStatus());
            kept.getInputStream().readNBytes("awake\n".length());
            assertEquals(-1, kept.getInputStream().read(), "the connection is closed");
        }
        assertThrows(ConnectException.class, () -> connect(program).close());
    }
}
