package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rosinbook.limit.Limit;
import rosinbook.notebook.Notebook;
import rosinbook.store.Archive;
import rosinbook.store.Damage;
import rosinbook.store.DatabaseSheetStore;

/** An archive that is sent is whole, and whoever reads it slowly keeps nobody from another. */
class ExportTest {
    private static final String REQUEST = "GET /api/export HTTP/1.1\r\nHost: localhost\r\n\r\n";

    /** More than a connection takes up by itself. */
    private static final int LARGE = 8_000_000;

    private static final Patience LONG = new Patience(
            Duration.ofMinutes(10),
            Duration.ofMinutes(10),
            Patience.USUAL.waiting(),
            Patience.USUAL.computing(),
            Patience.USUAL.connections(),
            Patience.USUAL.bodies(),
            Patience.USUAL.strangers());

    private final Api api = new Api(LONG);
    private final List<Socket> slow = new ArrayList<>();
    private long before;

    @BeforeEach
    void keepSomethingLarge() throws IOException {
        before = left();
        byte[] bytes = new byte[LARGE];
        new Random(8).nextBytes(bytes);
        new Notebook(DatabaseSheetStore.of(api.database.database(), DatabaseSheetStore.ONLY_NOTEBOOK), api.clock)
                .keep(bytes);
    }

    @AfterEach
    void stop() throws IOException {
        for (Socket socket : slow) {
            socket.close();
        }
        api.close();
        assertEquals(before, left(), "files are left");
    }

    private static long left() throws IOException {
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return files.filter(file -> file.getFileName().toString().startsWith("rosinbook-export"))
                    .count();
        }
    }

    @Test
    void its_length_is_told_before_it_is_sent() {
        Answer out = api.get("/api/export").expect(200);
        assertEquals("" + out.bytes().length, out.header("Content-Length"));
        assertTrue(out.bytes().length > LARGE);
    }

    @Test
    void those_who_read_slowly_or_go_away_keep_nobody_waiting() throws IOException {
        readSlowly(Limit.EXPORTS_AT_ONCE.most());
        api.get("/api/export").expect(200);
        slow.get(0).close();
        api.get("/api/export").expect(200);
        assertEquals(before, left(), "what is being sent has no name any more");
    }

    private void readSlowly(long readers) throws IOException {
        for (int i = 0; i < readers; i++) {
            Socket socket = RawHttp.openNarrow(api);
            slow.add(socket);
            socket.getOutputStream().write(REQUEST.getBytes(StandardCharsets.UTF_8));
            assertEquals("HTTP/1.1 200", new String(socket.getInputStream().readNBytes(12), StandardCharsets.UTF_8));
        }
    }

    @Test
    void only_so_many_files_lie_there_for_those_who_read_slowly() throws IOException {
        readSlowly(Limit.ARCHIVES_SENT_AT_ONCE.most());
        api.get("/api/export").problem(503, Limit.ARCHIVES_SENT_AT_ONCE.type());
        slow.get(0).close();
        awaitExport();
    }

    private void awaitExport() {
        long end = System.nanoTime() + Duration.ofSeconds(30).toNanos();
        while (api.get("/api/export").status() != 200) {
            assertTrue(System.nanoTime() < end, "it never came true");
        }
    }

    @Test
    void one_that_cannot_be_finished_is_not_begun() {
        api.create("pieces", "{'title':'One'}");
        Damage.execute(api.database.database(), "UPDATE revision SET content = '{'");
        Answer answer = api.get("/api/export").expect(500);
        assertEquals("application/problem+json", answer.header("Content-Type"));
        assertEquals(500, answer.json().path("status").asInt());
    }

    @Test
    void without_room_for_it_nothing_is_sent_at_all() {
        Archive archive = new Archive(api.database.database(), DatabaseSheetStore.ONLY_NOTEBOOK);
        Problem problem =
                assertThrows(Problem.class, () -> ExportFile.of(archive, Path.of("target", "no", "such", "folder")));
        assertEquals(507, problem.status());
        assertTrue(problem.getMessage().contains("rosinbook export"), problem.getMessage());
    }

    @Test
    void only_so_many_are_written_at_once() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try {
            List<Future<Answer>> answers = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                answers.add(threads.submit(() -> api.get("/api/export")));
            }
            int refused = 0;
            for (Future<Answer> each : answers) {
                Answer answer = each.get();
                if (answer.status() != 200) {
                    answer.problem(503, Limit.EXPORTS_AT_ONCE.type());
                    assertEquals("5", answer.header("Retry-After"));
                    refused++;
                }
            }
            assertTrue(refused > 0 && refused <= 6, refused + " were refused");
        } finally {
            threads.shutdownNow();
        }
        awaitExport();
    }
}
