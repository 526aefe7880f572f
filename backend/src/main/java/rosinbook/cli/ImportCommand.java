package rosinbook.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import rosinbook.store.Archive;
import rosinbook.store.Database;

/** {@code rosinbook import}. */
@Command(
        name = "import",
        mixinStandardHelpOptions = true,
        description = "Adds what an exported ZIP has and this notebook has not. Doing it twice changes nothing.")
final class ImportCommand implements Callable<Integer> {
    @Mixin
    private DatabaseOptions options;

    @Mixin
    private NotebookOptions notebooks;

    @Parameters(paramLabel = "FILE.zip", description = "A ZIP that export wrote.")
    private Path file;

    @Override
    public Integer call() throws IOException {
        if (!Files.isReadable(file)) {
            throw new IllegalArgumentException(file + " cannot be read; check its name");
        }
        try (Database database = options.open();
                InputStream source = Files.newInputStream(file)) {
            Archive.Imported imported =
                    notebooks.archive(database, Clock.systemUTC()).read(source);
            System.out.println("Added " + imported.added() + " revisions; " + imported.known() + " were here already.");
        }
        return 0;
    }
}
