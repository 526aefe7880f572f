package rosinbook.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import rosinbook.store.BackupCover;
import rosinbook.store.BackupFile;
import rosinbook.store.BackupFolder;
import rosinbook.store.BackupUnreadable;
import rosinbook.store.BackupWriter;
import rosinbook.store.Database;
import rosinbook.store.DatabaseInUse;
import rosinbook.store.Durable;

/** {@code rosinbook backup}. */
@Command(
        name = "backup",
        mixinStandardHelpOptions = true,
        description =
                "Writes everything, passphrases and shares included, from one moment into one file that restore reads,"
                        + " also while the service is running.")
final class BackupCommand implements Callable<Integer> {
    @Mixin
    private DatabaseOptions options;

    @Parameters(
            paramLabel = "FILE.zip",
            arity = "0..1",
            description =
                    "File to write (default: one here whose name tells the time); an earlier one is replaced when all"
                            + " is written and read again.")
    private Path file;

    @Override
    public Integer call() throws IOException {
        Instant now = Clock.systemUTC().instant();
        Path named = FileToWrite.checked(file == null ? Path.of(BackupFolder.name(now)) : file);
        Path unfinished = named.resolveSibling(named.getFileName() + ".unfinished");
        try {
            BackupCover cover = write(unfinished, now);
            // By the time that stands in it, which a running service took from its own clock.
            Path whole = file == null ? named.resolveSibling(BackupFolder.name(cover.madeAt())) : named;
            Durable.finish(unfinished, whole);
            System.out.println("Wrote " + whole + ": " + cover.rows() + " rows, " + Files.size(whole)
                    + " bytes, read again and whole.");
            if (cover.damages() > 0) {
                System.out.println("The notebook itself has " + cover.damages()
                        + " damages; stop the service, if there is one, then see: rosinbook verify");
                return 1;
            }
            return 0;
        } finally {
            Files.deleteIfExists(unfinished);
        }
    }

    private BackupCover write(Path unfinished, Instant now) throws IOException {
        try (Database database = options.openExisting()) {
            return new BackupWriter(database).writeChecked(unfinished, now);
        } catch (DatabaseInUse running) {
            Optional<InputStream> answer = options.folder().isEmpty()
                    ? Optional.empty()
                    : RunningService.ask(options.folder().get());
            return receive(answer.orElseThrow(() -> running), unfinished);
        }
    }

    private static BackupCover receive(InputStream backup, Path unfinished) throws IOException {
        Durable.createOwn(unfinished);
        try (backup;
                OutputStream target = Files.newOutputStream(unfinished)) {
            backup.transferTo(target);
        }
        try (BackupFile received = BackupFile.open(unfinished)) {
            return received.check().cover();
        } catch (BackupUnreadable brokenOff) {
            throw new IllegalArgumentException(
                    "the running service broke off; its log says why. Nothing was written", brokenOff);
        }
    }
}
