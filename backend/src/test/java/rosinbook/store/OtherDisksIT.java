package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.notebook.Notebook;
import rosinbook.testing.SmallDisk;

/** What is written to another disk than the notebook's: backups, and an import on its way in. */
class OtherDisksIT {
    private static final Clock CLOCK = Clock.systemUTC();

    @TempDir
    private Path folder;

    private static Notebook notebook(Database database) {
        return new Notebook(DatabaseSheetStore.onlyNotebook(database, CLOCK.instant()), CLOCK);
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }

    @Test
    void one_that_outgrows_its_disk_is_told_as_such_and_nothing_is_left_of_it() throws IOException {
        Path place = folder.resolve("disk");
        try (SmallDisk disk = SmallDisk.mount(place, 40);
                Database database = Database.inMemory("outgrows-" + UUID.randomUUID())) {
            Notebook notebook = notebook(database);
            Random random = new Random(8017);
            for (int number = 0; number < 6; number++) {
                byte[] file = new byte[8 << 20];
                random.nextBytes(file);
                notebook.keep(file);
            }
            Backups backups = new Backups(database, new BackupFolder(place), CLOCK);
            CannotWrite refused = assertThrows(CannotWrite.class, backups::make);
            assertEquals(CannotWrite.Reason.DISK_FULL, refused.reason());
            assertEquals(List.of(), files(place));
            database.change(sql -> sql.execute("DELETE FROM blob_part WHERE sha256 <> (SELECT MIN(sha256) FROM blob)"));
            database.change(sql -> sql.execute("DELETE FROM blob WHERE sha256 <> (SELECT MIN(sha256) FROM blob)"));
            disk.leave(DataFolder.RESERVE_BYTES + (4 << 20));
            assertEquals(
                    CannotWrite.Reason.DISK_FULL,
                    assertThrows(CannotWrite.class, backups::make).reason(),
                    "there is room for it, but not for the reserve beside it");
            disk.leave(DataFolder.RESERVE_BYTES - 4096);
            assertEquals(
                    CannotWrite.Reason.DISK_FULL,
                    assertThrows(CannotWrite.class, backups::make).reason());
            disk.leaveAll();
            disk.allowWriting(false);
            assertEquals(
                    CannotWrite.Reason.READ_ONLY,
                    assertThrows(CannotWrite.class, backups::make).reason());
        }
    }

    @Test
    void an_import_that_outgrows_the_temporary_folder_is_told_as_such() throws IOException {
        Path place = folder.resolve("disk");
        String before = System.getProperty("java.io.tmpdir");
        try (SmallDisk disk = SmallDisk.mount(place, 1);
                Database database = Database.inMemory("import-" + UUID.randomUUID())) {
            notebook(database);
            Archive archive = new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK);
            System.setProperty("java.io.tmpdir", place.toString());
            CannotWrite refused =
                    assertThrows(CannotWrite.class, () -> archive.read(new ByteArrayInputStream(new byte[3 << 20])));
            assertEquals(CannotWrite.Reason.DISK_FULL, refused.reason());
            assertEquals(List.of(), files(place));
            disk.allowWriting(false);
            assertThrows(CannotWrite.class, () -> archive.read(new ByteArrayInputStream(new byte[3])));
        } finally {
            System.setProperty("java.io.tmpdir", before);
        }
    }

    @Test
    void a_notebook_whose_own_disk_is_full_is_backed_up_elsewhere() throws IOException {
        Path place = folder.resolve("disk");
        try (SmallDisk disk = SmallDisk.mount(place, 80);
                Database database = Database.inFolder(place.resolve("data"))) {
            notebook(database);
            disk.leave(0);
            Backups backups = new Backups(database, new BackupFolder(folder.resolve("elsewhere")), CLOCK);
            assertEquals(List.of(backups.make()), backups.list());
        }
    }
}
