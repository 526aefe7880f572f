package rosinbook.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import rosinbook.store.Database;
import rosinbook.store.Durable;

/** {@code rosinbook export}. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        description = "Writes the whole notebook, every revision, into one ZIP of readable JSON.")
final class ExportCommand implements Callable<Integer> {
    @Mixin
    private DatabaseOptions options;

    @Mixin
    private NotebookOptions notebooks;

    @Parameters(paramLabel = "FILE.zip", description = "File to write; an earlier one is replaced when all is written.")
    private Path file;

    @Override
    public Integer call() throws IOException {
        Path whole = FileToWrite.checked(file);
        try (Database database = options.openExisting()) {
            write(database, whole);
        }
        System.out.println("Wrote " + file);
        return 0;
    }

    private void write(Database database, Path whole) throws IOException {
        Path unfinished = Files.createTempFile(whole.getParent(), "rosinbook", ".unfinished");
        try {
            try (OutputStream target = Files.newOutputStream(unfinished)) {
                notebooks.archive(database, Clock.systemUTC()).export(target);
            }
            Durable.finish(unfinished, whole);
        } finally {
            Files.deleteIfExists(unfinished);
        }
    }
}
