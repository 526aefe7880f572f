package rosinbook.testing;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import rosinbook.log.LogFormat;
import rosinbook.log.Logs;
import rosinbook.notebook.ContentJson;

/** Whatever goes to standard error while this is open. */
public final class Logged implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private final PrintStream before = System.err;
    private final ByteArrayOutputStream kept = new ByteArrayOutputStream();

    /** Begins to keep it, in this form. */
    public Logged(LogFormat format) {
        System.setErr(new PrintStream(kept, true, StandardCharsets.UTF_8));
        Logs.use(format);
    }

    public String text() {
        return kept.toString(StandardCharsets.UTF_8);
    }

    /** Every line as JSON; fails if one is not. */
    public List<JsonNode> lines() {
        return text().lines().map(Logged::json).toList();
    }

    private static JsonNode json(String line) {
        try {
            return ContentJson.strict().readTree(line);
        } catch (IOException problem) {
            throw new UncheckedIOException("not a line of JSON: " + line, problem);
        }
    }

    /** The line that was written when this request had been answered; the client may have its answer a little earlier. */
    public JsonNode request(String id) {
        Instant end = Instant.now().plus(PATIENCE);
        do {
            Optional<JsonNode> found = lines().stream()
                    .filter(line -> line.path("message").asText().equals("answered"))
                    .filter(line -> line.path("requestId").asText().equals(id))
                    .findFirst();
            if (found.isPresent()) {
                return found.get();
            }
            LockSupport.parkNanos(Duration.ofMillis(5).toNanos());
        } while (Instant.now().isBefore(end));
        throw new AssertionError("no line for request " + id + " in: " + text());
    }

    @Override
    public void close() {
        System.setErr(before);
        Logs.use(LogFormat.PLAIN);
    }
}
