package rosinbook.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.HttpURLConnection;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.HexFormat;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rosinbook.store.BackupWriter;
import rosinbook.store.Database;
import rosinbook.store.Durable;

/**
 * How {@code rosinbook backup} reaches a service that has the notebook open: a door of its own on the loopback address
 * that hands out backups to whoever knows its key, and nothing else. Address and key stand in {@code rosinbook.running} in
 * the notebook's folder, which only its user can read; both are gone when the service ends, and new each time.
 */
final class RunningService implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(RunningService.class);
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String PATH = "/backup";

    private final Path note;
    private final HttpServer server;
    private final ExecutorService worker = Executors.newSingleThreadExecutor();

    private RunningService(Path note, HttpServer server) {
        this.note = note;
        this.server = server;
    }

    private static Path note(Path folder) {
        return folder.resolve("rosinbook.running");
    }

    /** Opens the door for a notebook in a folder. */
    static RunningService open(Path folder, Database database, Clock clock) throws IOException {
        byte[] random = new byte[32];
        new SecureRandom().nextBytes(random);
        String key = "Bearer " + HexFormat.of().formatHex(random);
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        RunningService service = new RunningService(note(folder), server);
        server.createContext(PATH, exchange -> answer(exchange, key, database, clock));
        server.setExecutor(service.worker);
        server.start();
        String address = "http://127.0.0.1:" + server.getAddress().getPort() + PATH;
        Durable.writeOwn(
                service.note,
                JSON.createObjectNode().put("address", address).put("key", key).toString());
        return service;
    }

    private static void answer(HttpExchange exchange, String key, Database database, Clock clock) throws IOException {
        try (exchange) {
            String shown = Optional.ofNullable(exchange.getRequestHeaders().getFirst("Authorization"))
                    .orElse("");
            boolean isRight =
                    MessageDigest.isEqual(shown.getBytes(StandardCharsets.UTF_8), key.getBytes(StandardCharsets.UTF_8));
            if (!isRight || !exchange.getRequestURI().getPath().equals(PATH)) {
                exchange.sendResponseHeaders(HttpURLConnection.HTTP_NOT_FOUND, -1);
                return;
            }
            exchange.sendResponseHeaders(HttpURLConnection.HTTP_OK, 0);
            OutputStream body = new BufferedOutputStream(exchange.getResponseBody(), 1 << 16);
            new BackupWriter(database).write(body, clock.instant());
            body.flush();
        } catch (IOException | RuntimeException problem) {
            LOG.warn("A backup that was asked for broke off", problem);
        }
    }

    /**
     * Asks the service that has this folder's notebook open.
     *
     * @return the backup, to be closed after reading; empty if no such service answers
     */
    static Optional<InputStream> ask(Path folder) throws IOException {
        if (!Files.isReadable(note(folder))) {
            return Optional.empty();
        }
        JsonNode found = JSON.readTree(Files.readString(note(folder)));
        HttpRequest request = HttpRequest.newBuilder(
                        URI.create(found.path("address").asText()))
                .header("Authorization", found.path("key").asText())
                .timeout(Duration.ofMinutes(5))
                .build();
        try {
            HttpResponse<InputStream> answer = HttpClient.newBuilder()
                    .connectTimeout(Duration.ofSeconds(10))
                    .build()
                    .send(request, BodyHandlers.ofInputStream());
            if (answer.statusCode() == HttpURLConnection.HTTP_OK) {
                return Optional.of(answer.body());
            }
            answer.body().close();
            return Optional.empty();
        } catch (java.net.ConnectException | java.net.http.HttpTimeoutException nobodyThere) {
            return Optional.empty();
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new UncheckedIOException(new IOException("interrupted", interrupted));
        }
    }

    @Override
    public void close() {
        try {
            Files.deleteIfExists(note);
        } catch (IOException left) {
            LOG.debug("{} is left; the next start replaces it", note);
        }
        server.stop(0);
        worker.shutdown();
    }
}
