package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Recordings of the level bench leave the disk, whoever uses it afterwards and however the service ended. */
class LevelUploadsTest {
    private static final Duration OFTEN = Duration.ofMillis(20);
    private static final LevelUploads.Owner ADA =
            new LevelUploads.Owner(Optional.of(UUID.randomUUID()), UUID.randomUUID());

    @TempDir
    private Path temporary;

    private final SettableClock clock = new SettableClock(Instant.now().toString());

    private static LevelUploads.Upload receive(LevelUploads uploads) {
        return uploads.receive(ADA, "reel.wav", new ByteArrayInputStream(new byte[1000]));
    }

    private static void await(BooleanSupplier condition) {
        long end = System.nanoTime() + Duration.ofSeconds(30).toNanos();
        while (!condition.getAsBoolean()) {
            assertTrue(System.nanoTime() < end, "it never came true");
            Thread.onSpinWait();
        }
    }

    private long folders() throws IOException {
        try (Stream<Path> found = Files.list(temporary)) {
            return found.count();
        }
    }

    @Test
    void after_an_hour_a_recording_is_let_go_though_nobody_uses_the_bench() {
        try (LevelUploads uploads = new LevelUploads(clock, temporary, OFTEN)) {
            Path early = receive(uploads).files().get(0).file();
            clock.pass(Duration.ofMinutes(59));
            Path late = receive(uploads).files().get(0).file();
            clock.pass(Duration.ofMinutes(2));
            await(() -> !Files.exists(early));
            assertTrue(Files.exists(late));
        }
    }

    @Test
    void what_a_file_is_called_is_kept_beside_it_and_no_letter_of_it_is_cut_in_two() {
        String letter = "\ud801\udc00"; // one that takes two places
        try (LevelUploads uploads = new LevelUploads(clock, temporary, OFTEN)) {
            LevelUploads.Upload upload =
                    uploads.receive(ADA, letter.repeat(30) + ".wave", new ByteArrayInputStream(new byte[1000]));
            assertEquals("_" + letter.repeat(27) + ".wave", upload.name());
            assertEquals("1.wav", upload.files().get(0).file().getFileName().toString());
        }
    }

    @Test
    void nothing_is_left_when_it_is_closed_in_order() throws IOException {
        try (LevelUploads uploads = new LevelUploads(clock, temporary, OFTEN)) {
            receive(uploads);
            assertEquals(1, folders());
        }
        assertEquals(0, folders());
    }

    @Test
    void two_services_in_one_process_leave_each_other_alone() {
        try (LevelUploads one = new LevelUploads(clock, temporary, OFTEN);
                LevelUploads other = new LevelUploads(clock, temporary, OFTEN)) {
            receive(one);
            clock.pass(Duration.ofHours(3));
            Path ofOther = receive(other).files().get(0).file();
            new UploadFolder(temporary).clearLeft(clock.instant());
            assertTrue(Files.exists(ofOther));
        }
    }

    @Test
    void what_a_killed_process_left_is_removed_and_what_a_running_one_has_is_not() throws Exception {
        Path ofEarlierRelease = Files.createDirectory(temporary.resolve("rosinbook-levels123"));
        Files.write(ofEarlierRelease.resolve("reel.wav"), new byte[10]);
        Path somethingElse = Files.createDirectory(temporary.resolve("rosin"));
        Process running = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Running.class.getName(),
                        temporary.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try (BufferedReader out =
                new BufferedReader(new InputStreamReader(running.getInputStream(), StandardCharsets.UTF_8))) {
            Path itsFolder = Path.of(out.readLine());
            try (LevelUploads uploads = new LevelUploads(clock, temporary, OFTEN)) {
                receive(uploads);
                assertTrue(Files.exists(ofEarlierRelease), "it may be in use, as young as it is");
                clock.pass(Duration.ofHours(2));
                await(() -> !Files.exists(ofEarlierRelease));
                assertTrue(Files.exists(itsFolder), "it is running");
                running.destroyForcibly().waitFor();
                await(() -> !Files.exists(itsFolder.getParent()));
                assertTrue(Files.exists(somethingElse));
            }
        } finally {
            running.destroyForcibly();
        }
        assertEquals(1, folders());
    }

    /** Another process that has a recording, until it is killed. */
    static final class Running {
        private Running() {}

        public static void main(String[] arguments) throws IOException {
            System.out.println(new UploadFolder(Path.of(arguments[0])).forOne());
            System.in.read();
        }
    }
}
