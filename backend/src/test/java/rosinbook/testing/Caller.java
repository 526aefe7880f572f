package rosinbook.testing;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import rosinbook.notebook.ContentJson;

/**
 * Somebody who calls a running program.
 *
 * @param base its address, ending in a slash
 * @param cookie sent with every request; may be empty
 */
public record Caller(String base, String cookie) {
    private static final HttpClient CLIENT =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(10)).build();

    /** Somebody without a cookie. */
    public static Caller of(RunningJar program) {
        return new Caller(program.address(), "");
    }

    /** An answer's status and text. */
    public record Said(int status, String text, HttpResponse<String> whole) {
        public JsonNode json() {
            return ContentJson.parse(text.getBytes(StandardCharsets.UTF_8), 64 << 20);
        }
    }

    public Said get(String path) {
        return send(request(path).GET());
    }

    public Said delete(String path) {
        return send(request(path).DELETE());
    }

    /** JSON with single quotes for double ones. */
    public Said post(String path, String json) {
        return send(withJson(path).POST(BodyPublishers.ofString(json.replace('\'', '"'))));
    }

    /** JSON with single quotes for double ones, over a revision. */
    public Said put(String path, int revision, String json) {
        return send(withJson(path)
                .header("If-Match", "\"r" + revision + "\"")
                .PUT(BodyPublishers.ofString(json.replace('\'', '"'))));
    }

    /** A form as a browser sends it. */
    public Said form(String path, String fields) {
        return send(request(path)
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString(fields)));
    }

    private HttpRequest.Builder withJson(String path) {
        return request(path).header("Content-Type", "application/json");
    }

    private HttpRequest.Builder request(String path) {
        HttpRequest.Builder request =
                HttpRequest.newBuilder(URI.create(base).resolve(path)).timeout(Duration.ofSeconds(60));
        return cookie.isEmpty() ? request : request.header("Cookie", cookie);
    }

    private static Said send(HttpRequest.Builder request) {
        try {
            HttpResponse<String> answer = CLIENT.send(request.build(), BodyHandlers.ofString());
            return new Said(answer.statusCode(), answer.body(), answer);
        } catch (IOException problem) {
            throw new java.io.UncheckedIOException(problem);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }
}
