package rosinbook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import org.jooq.exception.DataAccessException;
import org.junit.jupiter.api.Test;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rosinbook.testing.Logged;

class LogsTest {
    private static final String SECRET = "quiet waltz for Ada";
    private static final Logger OWN = LoggerFactory.getLogger("rosinbook.somewhere");
    private static final Logger LIBRARY = LoggerFactory.getLogger("org.library.Thing");

    private static JsonNode only(Logged logged) {
        List<JsonNode> lines = logged.lines();
        assertEquals(1, lines.size(), logged.text());
        return lines.get(0);
    }

    @Test
    void a_line_of_json_has_what_stands_beside_the_message_as_members_of_their_own() {
        try (Logged logged = new Logged(LogFormat.JSON)) {
            OWN.atInfo()
                    .addKeyValue("status", 200)
                    .addKeyValue("route", "/s/{token}")
                    .log("answered");
            JsonNode line = only(logged);
            assertEquals("INFO", line.path("level").asText());
            assertEquals("rosinbook.somewhere", line.path("logger").asText());
            assertEquals("answered", line.path("message").asText());
            assertEquals(200, line.path("status").intValue());
            assertEquals("/s/{token}", line.path("route").asText());
            assertTrue(line.path("time").asText().endsWith("Z"), "in UTC");
            Instant.parse(line.path("time").asText());
        }
    }

    @Test
    void plain_is_quiet_unless_something_is_wrong() {
        try (Logged logged = new Logged(LogFormat.PLAIN)) {
            OWN.info("all is well");
            LIBRARY.info("started {}", 1);
            assertEquals("", logged.text());
            OWN.atWarn().addKeyValue("status", 500).log("this is not");
            assertTrue(logged.text().matches("\\S+ WARN  somewhere this is not status=\"500\"\\R"), logged.text());
        }
    }

    @Test
    void libraries_are_heard_from_warnings_on_and_without_what_they_quote() {
        try (Logged logged = new Logged(LogFormat.JSON)) {
            LIBRARY.info("nothing to see");
            LIBRARY.warn("{} was asked {} times", SECRET, 3);
            assertEquals(
                    "\u2026 was asked 3 times", only(logged).path("message").asText());
        }
        try (Logged logged = new Logged(LogFormat.JSON)) {
            LIBRARY.warn("/s/" + SECRET.replace(' ', '-'));
            LIBRARY.atWarn().addKeyValue("title", SECRET).log("kept {}", SECRET);
            assertFalse(logged.text().contains("waltz"), logged.text());
            assertEquals(2, logged.lines().size());
        }
    }

    @Test
    void what_goes_through_the_logging_of_the_jdk_comes_the_same_way() {
        try (Logged logged = new Logged(LogFormat.JSON)) {
            java.util.logging.Logger.getLogger("org.library.Driver")
                    .log(java.util.logging.Level.WARNING, "cannot reach {0}", SECRET);
            assertEquals("org.library.Driver", only(logged).path("logger").asText());
            assertFalse(logged.text().contains("waltz"), logged.text());
        }
    }

    @Test
    void an_exception_is_told_by_type_and_place_and_not_by_its_words() {
        SQLException sql = new SQLException("Key (title)=(" + SECRET + ") already exists", "23505", 7);
        sql.setNextException(new SQLException("Failing row contains (" + SECRET + ")"));
        IllegalStateException problem =
                new IllegalStateException("not " + SECRET, new DataAccessException("SQL [" + SECRET + "]", sql));
        problem.addSuppressed(new UncheckedIOException(new IOException(SECRET)));
        for (LogFormat format : LogFormat.values()) {
            try (Logged logged = new Logged(format)) {
                OWN.error("it failed", problem);
                LIBRARY.error("it failed", problem);
                String text = logged.text();
                assertFalse(text.contains("waltz"), text);
                assertTrue(text.contains("java.lang.IllegalStateException"), text);
                assertTrue(text.contains("SQLSTATE 23505, code 7"), text);
                assertTrue(text.contains("LogsTest.java:"), text);
            }
        }
        assertFalse(Logs.trace(problem).contains("waltz"), Logs.trace(problem));
        assertTrue(Logs.trace(problem).contains("LogsTest.java:"), Logs.trace(problem));
        assertEquals("java.sql.SQLException: SQLSTATE 23505, code 7", Logs.cause(problem));
    }

    @Test
    void what_the_operating_system_and_the_virtual_machine_say_is_kept() {
        assertTrue(Logs.trace(new AccessDeniedException("/home/" + SECRET, null, "read-only file system"))
                .startsWith("java.nio.file.AccessDeniedException: read-only file system"));
        assertTrue(Logs.trace(new IndexOutOfBoundsException("Index 5 out of bounds for length 3"))
                .contains("Index 5 out of bounds"));
        IOException full = fullDisk();
        assertEquals("No space left on device", full.getMessage());
        assertTrue(Logs.trace(full).startsWith("java.io.IOException: No space left on device"), Logs.trace(full));
    }

    /** Linux' {@code /dev/full}, see full(4): every write fails for want of space. */
    private static IOException fullDisk() {
        try (FileChannel full = FileChannel.open(Path.of("/dev/full"), StandardOpenOption.WRITE)) {
            full.write(java.nio.ByteBuffer.wrap(new byte[1]));
        } catch (IOException problem) {
            return problem;
        }
        throw new AssertionError("/dev/full took something");
    }

    @Test
    void nobody_can_write_a_line_of_their_own_into_the_log() {
        try (Logged logged = new Logged(LogFormat.PLAIN)) {
            OWN.warn("asked for {}", "x\r\n2026-11-26T20:00:00Z ERROR all is lost\u0000\u001b[31m");
            assertEquals(1, logged.text().lines().count(), logged.text());
            assertFalse(logged.text().contains("\u001b"), logged.text());
        }
    }

    @Test
    void what_a_thread_dies_of_is_told_the_same_way() throws InterruptedException {
        try (Logged logged = new Logged(LogFormat.JSON)) {
            Thread thread = new Thread(() -> {
                throw new IllegalStateException(SECRET);
            });
            thread.start();
            thread.join();
            assertEquals("a thread ended", only(logged).path("message").asText());
            assertFalse(logged.text().contains("waltz"), logged.text());
        }
    }
}
