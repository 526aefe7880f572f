package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.store.BackupFolder;
import rosinbook.testing.RunningJar;

/** Backups of the packaged program while it runs. */
class BackupCommandIT {
    private final HttpClient client = HttpClient.newHttpClient();

    @TempDir
    private Path folder;

    private record Outcome(int status, String text) {}

    private static Outcome run(String... arguments) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(RunningJar.command(arguments))
                .redirectErrorStream(true)
                .start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Outcome(process.waitFor(), text);
    }

    private static String mode(Path file) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(file));
    }

    private int answer(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.build(), BodyHandlers.discarding()).statusCode();
    }

    @Test
    void the_command_backs_up_what_the_service_has_open_and_restore_brings_it_back() throws Exception {
        Path data = folder.resolve("data");
        Path file = folder.resolve("one.zip");
        Path note = data.resolve("rosinbook.running");
        try (RunningJar program = RunningJar.serve(data, "--backups", "off")) {
            HttpRequest.Builder example = HttpRequest.newBuilder(URI.create(program.address() + "api/example"))
                    .header("Content-Type", "application/json")
                    .POST(BodyPublishers.ofString("{}"));
            assertEquals(201, answer(example));
            Outcome backup = run("backup", "--data", data.toString(), file.toString());
            assertEquals(0, backup.status, backup.text);
            assertTrue(backup.text.contains("read again and whole"), backup.text);
            assertEquals("rw-------", mode(file));

            assertEquals("rw-------", mode(note));
            JsonNode door = new ObjectMapper().readTree(note.toFile());
            URI address = URI.create(door.path("address").asText());
            assertEquals("127.0.0.1", address.getHost());
            assertEquals(404, answer(HttpRequest.newBuilder(address)));
            assertEquals(
                    404, answer(HttpRequest.newBuilder(address).header("Authorization", "Bearer " + "0".repeat(64))));
            String key = door.path("key").asText();
            assertEquals(
                    404,
                    answer(HttpRequest.newBuilder(address.resolve("/backup/more"))
                            .header("Authorization", key)));
            assertEquals(200, answer(HttpRequest.newBuilder(address).header("Authorization", key)));
            assertEquals(
                    404,
                    answer(HttpRequest.newBuilder(URI.create(program.address() + "backup"))
                            .header("Authorization", key)),
                    "the service itself knows no such address");
        }
        assertFalse(Files.exists(note));
        Outcome restored = run("restore", "--data", folder.resolve("elsewhere").toString(), file.toString());
        assertEquals(0, restored.status, restored.text);
        for (String place : List.of("data", "elsewhere")) {
            Outcome exported = run(
                    "export",
                    "--data",
                    folder.resolve(place).toString(),
                    folder.resolve(place + ".zip").toString());
            assertEquals(0, exported.status, exported.text);
        }
        assertEquals(contents(folder.resolve("data.zip")), contents(folder.resolve("elsewhere.zip")));
    }

    private static String contents(Path zip) throws IOException {
        StringBuilder text = new StringBuilder();
        try (var file = new java.util.zip.ZipFile(zip.toFile())) {
            for (var entry : java.util.Collections.list(file.entries())) {
                byte[] bytes = file.getInputStream(entry).readAllBytes();
                text.append(entry.getName()).append(new String(bytes, StandardCharsets.ISO_8859_1));
            }
        }
        return text.toString();
    }

    @Test
    void a_service_makes_its_first_backup_soon_after_it_starts_and_not_again_the_same_day() throws Exception {
        Path data = folder.resolve("data");
        BackupFolder kept = new BackupFolder(data.resolve("backups"));
        try (RunningJar program = RunningJar.serve(data)) {
            assertTrue(program.address().startsWith("http://127.0.0.1"));
            awaitBackups(kept);
        }
        assertEquals(1, kept.list().size());
        assertEquals(
                "rw-------",
                mode(data.resolve("backups").resolve(kept.list().get(0).name())));
        assertEquals(kept.list(), kept.newestWhole());
        try (RunningJar program = RunningJar.serve(data)) {
            assertTrue(program.address().startsWith("http://127.0.0.1"));
            Thread.sleep(8000);
        }
        assertEquals(1, kept.list().size());
    }

    private static void awaitBackups(BackupFolder kept) throws InterruptedException {
        Instant end = Instant.now().plus(Duration.ofSeconds(60));
        while (kept.list().isEmpty() && Instant.now().isBefore(end)) {
            Thread.sleep(200);
        }
    }

    @Test
    void without_a_service_the_command_reads_the_notebook_itself_even_where_a_killed_one_left_its_note()
            throws Exception {
        Path data = folder.resolve("data");
        RunningJar.serve(data).kill();
        assertTrue(Files.exists(data.resolve("rosinbook.running")));
        Path file = folder.resolve("one.zip");
        Outcome backup = run("backup", "--data", data.toString(), file.toString());
        assertEquals(0, backup.status, backup.text);
        Outcome nowhere = run(
                "backup",
                "--data",
                data.toString(),
                folder.resolve("no/such.zip").toString());
        assertEquals(2, nowhere.status);
        assertTrue(nowhere.text.contains("is not there; make it first"), nowhere.text);
    }
}
