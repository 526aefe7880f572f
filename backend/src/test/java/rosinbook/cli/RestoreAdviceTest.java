package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.store.BackupFolder;
import rosinbook.store.Backups;
import rosinbook.store.Database;
import rosinbook.store.DatabaseSheetStore;

/** What is advised for a damaged notebook where the backups are not only its own. */
class RestoreAdviceTest {
    private static final Instant NOW = Instant.parse("2026-11-12T20:00:00Z");

    @TempDir
    private Path folder;

    private String backedUp(String name, Instant begun) {
        Clock clock = Clock.fixed(begun.plus(Duration.ofDays(3)), ZoneOffset.UTC);
        try (Database database = Database.inFolder(folder.resolve(name))) {
            DatabaseSheetStore.onlyNotebook(database, begun);
            return new Backups(database, new BackupFolder(folder.resolve("kept")), clock)
                    .make()
                    .name();
        }
    }

    @Test
    void another_notebooks_backup_is_never_named_as_the_one_to_restore() throws IOException {
        String mine = backedUp("mine", NOW);
        String others = backedUp("others", NOW.plus(Duration.ofDays(1)));
        Files.write(folder.resolve("mine").resolve("rosinbook.mv.db"), new byte[0]);
        StringWriter err = new StringWriter();
        int status = Main.commandLine()
                .setErr(new PrintWriter(err, true))
                .execute(
                        "serve",
                        "--port",
                        "0",
                        "--data",
                        folder.resolve("mine").toString(),
                        "--backups",
                        folder.resolve("kept").toString());
        String told = err.toString();
        assertEquals(2, status, told);
        assertFalse(told.contains("The newest whole backup is"), told);
        assertTrue(told.contains("  " + mine + ", of a notebook begun at 2026-11-12T20:00:00Z"), told);
        assertTrue(told.contains("  " + others + ", of a notebook begun at 2026-11-13T20:00:00Z"), told);
        assertTrue(told.contains("restore the one that is this notebook's"), told);
    }
}
