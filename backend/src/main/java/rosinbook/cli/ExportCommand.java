package rosinbook.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import rosinbook.store.Database;

/** {@code rosinbook export}. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        description = "Writes the whole notebook, every revision, into one ZIP of readable JSON.")
final class ExportCommand implements Callable<Integer> {
    @Mixin
    private DatabaseOptions options;

    @Parameters(paramLabel = "FILE.zip", description = "File to write; an earlier one is replaced when all is written.")
    private Path file;

    @Override
    public Integer call() throws IOException {
        Path whole = file.toAbsolutePath();
        Path unfinished = Files.createTempFile(whole.getParent(), "rosinbook", ".unfinished");
        try (Database database = options.open()) {
            try (OutputStream target = Files.newOutputStream(unfinished)) {
                DatabaseOptions.archive(database, Clock.systemUTC()).export(target);
            }
            Files.move(unfinished, whole, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(unfinished);
        }
        System.out.println("Wrote " + file);
        return 0;
    }
}
