package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.notebook.Blob;
import rosinbook.notebook.ContentJson;
import rosinbook.testing.Needs;
import rosinbook.testing.RunningJar;
import rosinbook.testing.SmallDisk;

/** The packaged program on a disk that is full, and in a folder that can only be read. */
class FullDiskIT {
    private static final int MEGABYTES = 160;
    private static final String NOBODY = "65534";

    private final BusyPlayers players = new BusyPlayers();

    @TempDir
    private Path folder;

    private SmallDisk disk;
    private Path data;

    @BeforeEach
    void mount() throws IOException {
        disk = SmallDisk.mount(folder.resolve("disk"), MEGABYTES);
        data = folder.resolve("disk").resolve("data");
    }

    @AfterEach
    void unmount() throws IOException {
        if (disk != null) {
            disk.close();
        }
    }

    private UUID piece(RunningJar program) throws IOException, InterruptedException {
        return players.create(program.address(), "pieces", "{'title':'Piece','styles':['reel']}");
    }

    private void assertRefused(int status, String type, org.junit.jupiter.api.function.Executable saving) {
        BusyPlayers.Refused refused = assertThrows(BusyPlayers.Refused.class, saving);
        assertEquals(status, refused.status, refused.body);
        assertTrue(refused.body.contains("\"/problems/" + type + "\""), refused.body);
    }

    private void assertAllReadable(RunningJar program) throws IOException, InterruptedException {
        for (Map.Entry<BusyPlayers.Key, String> each : players.answered.entrySet()) {
            assertEquals(each.getValue(), players.read(program.address(), each.getKey()), each.getKey()::toString);
        }
    }

    @Test
    void a_full_disk_is_told_reading_goes_on_and_with_room_again_so_does_writing() throws Exception {
        try (RunningJar program = RunningJar.serve(data)) {
            UUID id = piece(program);
            for (long left : new long[] {DataFolder.RESERVE_BYTES - (1 << 20), 0}) {
                disk.leave(left);
                assertRefused(507, "disk-full", () -> piece(program));
                assertRefused(
                        507,
                        "disk-full",
                        () -> players.save(program.address(), "pieces", id, 1, "{'title':'No room'}", ""));
                assertRefused(507, "disk-full", () -> players.backup(program.address()));
                assertAllReadable(program);
                disk.leaveAll();
                piece(program);
            }
            players.save(program.address(), "pieces", id, 1, "{'title':'Room again'}", "");
            players.backup(program.address());
            assertAllReadable(program);
        }
        assertEquals(List.of(), players.lost(data));
    }

    @Test
    void a_change_that_outgrows_the_disk_is_undone_and_the_database_comes_back_by_itself() throws Exception {
        byte[] archive = archive(12, 8 << 20);
        try (RunningJar program = RunningJar.serve(data, "--backups", "off")) {
            for (int round = 0; round < 3; round++) {
                piece(program);
                disk.leave(DataFolder.RESERVE_BYTES + (4 << 20));
                HttpResponse<byte[]> refused = imported(program, archive);
                String body = new String(refused.body(), StandardCharsets.UTF_8);
                assertEquals(507, refused.statusCode(), body);
                assertTrue(body.contains("\"/problems/disk-full\""), body);
                assertAllReadable(program);
                disk.leaveAll();
                piece(program);
                assertAllReadable(program);
            }
            HttpResponse<byte[]> accepted = imported(program, archive(2, 8 << 20));
            assertEquals(200, accepted.statusCode(), new String(accepted.body(), StandardCharsets.UTF_8));
        }
        assertEquals(List.of(), players.lost(data));
        try (Database database = Database.inFolder(data)) {
            assertEquals(List.of(), BackupWriter.damages(database));
        }
    }

    private HttpResponse<byte[]> imported(RunningJar program, byte[] archive) throws IOException, InterruptedException {
        return players.exchange(HttpRequest.newBuilder(URI.create(program.address() + "api/import"))
                .header("Content-Type", "application/zip")
                .POST(BodyPublishers.ofByteArray(archive)));
    }

    /** An archive of files that cannot be packed any smaller. */
    private static byte[] archive(int files, int length) throws IOException {
        Random random = new Random(files);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("rosinbook.json"));
            zip.write("{\"format\": 1}".getBytes(StandardCharsets.UTF_8));
            for (int number = 0; number < files; number++) {
                byte[] file = new byte[length];
                random.nextBytes(file);
                zip.putNextEntry(new ZipEntry("blobs/" + Blob.of(file).sha256()));
                zip.write(file);
            }
        }
        return bytes.toByteArray();
    }

    private static void assertSentence(RunningJar.Ended ended, String words) {
        String text = ended.out() + ended.err();
        assertEquals(2, ended.status(), text);
        assertTrue(text.contains(words), text);
        assertFalse(text.contains("\tat "), text);
    }

    @Test
    void a_start_on_a_full_disk_says_so_or_reads_what_is_there() throws Exception {
        try (RunningJar program = RunningJar.serve(data)) {
            piece(program);
        }
        disk.leave(0);
        assertSentence(
                RunningJar.run(
                        "serve", "--port", "0", "--data", data.resolve("fresh").toString()),
                "MB");
        try (RunningJar program = RunningJar.serve(data, "--backups", "off")) {
            assertAllReadable(program);
            assertRefused(507, "disk-full", () -> piece(program));
        }
        disk.leaveAll();
        try (RunningJar program = RunningJar.serve(data)) {
            piece(program);
            assertAllReadable(program);
        }
    }

    @Test
    void a_start_in_a_folder_that_can_only_be_read_says_so_and_changes_nothing() throws Exception {
        try (RunningJar program = RunningJar.serve(data)) {
            piece(program);
        }
        byte[] before = Files.readAllBytes(data.resolve("rosinbook.mv.db"));
        disk.allowWriting(false);
        for (String command : List.of("serve", "verify", "backup")) {
            RunningJar.Ended outcome = command.equals("serve")
                    ? RunningJar.run(command, "--port", "0", "--data", data.toString())
                    : RunningJar.run(command, "--data", data.toString());
            assertSentence(outcome, "read-only");
        }
        assertSentence(
                RunningJar.run(
                        "serve", "--port", "0", "--data", data.resolve("fresh").toString()),
                "read-only");
        disk.allowWriting(true);
        assertEquals(
                ContentJson.sha256(new String(before, StandardCharsets.ISO_8859_1)),
                ContentJson.sha256(
                        new String(Files.readAllBytes(data.resolve("rosinbook.mv.db")), StandardCharsets.ISO_8859_1)));
        assertEquals(List.of(), players.lost(data));
    }

    @Test
    void a_file_that_becomes_read_only_while_the_service_runs_is_told_until_it_is_writable_again() throws Exception {
        Needs.program("setpriv", "util-linux");
        Files.createDirectories(data);
        Files.setAttribute(data, "unix:uid", Integer.valueOf(NOBODY));
        for (Path above = folder; above != null && !above.equals(Path.of("/tmp")); above = above.getParent()) {
            above.toFile().setExecutable(true, false);
        }
        List<String> command =
                RunningJar.command("serve", "--port", "0", "--data", data.toString(), "--backups", "off");
        command.addAll(0, List.of("setpriv", "--reuid", NOBODY, "--regid", NOBODY, "--clear-groups"));
        try (RunningJar program = RunningJar.of(command)) {
            piece(program);
            assertTrue(data.resolve("rosinbook.mv.db").toFile().setWritable(false, false));
            assertRefused(503, "read-only", () -> piece(program));
            assertAllReadable(program);
            assertTrue(data.resolve("rosinbook.mv.db").toFile().setWritable(true, true));
            piece(program);
            assertAllReadable(program);
        }
        assertEquals(List.of(), players.lost(data));
    }
}
