package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.testing.RunningJar;

/**
 * The packaged program is killed (SIGKILL) again and again while several clients write; every answered save must be there
 * afterwards. {@code -Drosinbook.kills=N} sets how often; {@code -Drosinbook.kills.seed=N} the moments.
 */
class KillIT {
    private static final int KILLS = Integer.getInteger("rosinbook.kills", 6);
    private static final long SEED = Long.getLong("rosinbook.kills.seed", 8017L);
    private static final int CLIENTS = 4;

    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
    private final Map<UUID, Integer> acknowledged = new ConcurrentHashMap<>();

    @TempDir
    private Path folder;

    @Test
    void every_answered_save_survives_being_killed() throws Exception {
        Random random = new Random(SEED);
        for (int round = 0; round < KILLS; round++) {
            RunningJar program = RunningJar.serve(folder);
            checkAcknowledged(program);
            List<Thread> writers = new ArrayList<>();
            for (int i = 0; i < CLIENTS; i++) {
                Thread writer = new Thread(() -> writeUntilKilled(program.address()));
                writer.start();
                writers.add(writer);
            }
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(200 + random.nextInt(800)));
            program.kill();
            for (Thread writer : writers) {
                writer.join();
            }
        }
        try (RunningJar program = RunningJar.serve(folder)) {
            checkAcknowledged(program);
        }
        Process verify = new ProcessBuilder(RunningJar.command("verify", "--data", folder.toString()))
                .inheritIO()
                .start();
        assertEquals(0, verify.waitFor(), "verify finds every revision whole");
        assertTrue(acknowledged.size() > KILLS, "there was something to lose: " + acknowledged.size() + " sheets");
        System.out.println("Killed " + KILLS + " times; all of "
                + acknowledged.values().stream().mapToInt(Integer::intValue).sum() + " answered saves of "
                + acknowledged.size() + " sheets were there");
    }

    private void writeUntilKilled(String address) {
        UUID id = UUID.randomUUID();
        try {
            if (send(address, "POST", "", "{\"id\":\"" + id + "\",\"content\":{\"title\":\"Piece\"}}", null)
                            .statusCode()
                    != 201) {
                return;
            }
            acknowledged.put(id, 1);
            for (int revision = 1; ; revision++) {
                String body = "{\"content\":{\"title\":\"Piece\",\"notes\":\"save " + revision + "\"}}";
                if (send(address, "PUT", "/" + id, body, "\"r" + revision + "\"")
                                .statusCode()
                        != 200) {
                    return;
                }
                acknowledged.put(id, revision + 1);
            }
        } catch (IOException killed) {
            // the connection broke off, as it should
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private HttpResponse<String> send(String address, String method, String path, String body, String ifMatch)
            throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(address + "api/pieces" + path))
                .header("Content-Type", "application/json")
                .timeout(Duration.ofSeconds(20))
                .method(method, BodyPublishers.ofString(body));
        if (ifMatch != null) {
            request.header("If-Match", ifMatch);
        }
        return client.send(request.build(), BodyHandlers.ofString());
    }

    private void checkAcknowledged(RunningJar program) throws IOException, InterruptedException {
        for (Map.Entry<UUID, Integer> saved : acknowledged.entrySet()) {
            URI uri = URI.create(program.address() + "api/pieces/" + saved.getKey() + "/revisions/" + saved.getValue());
            HttpResponse<String> found = client.send(HttpRequest.newBuilder(uri).build(), BodyHandlers.ofString());
            assertEquals(200, found.statusCode(), "revision " + saved.getValue() + " of " + saved.getKey());
        }
    }
}
