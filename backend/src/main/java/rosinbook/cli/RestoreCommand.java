package rosinbook.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import rosinbook.store.Restore;

/** {@code rosinbook restore}. */
@Command(
        name = "restore",
        mixinStandardHelpOptions = true,
        description =
                "Brings a backup into an empty folder or an empty PostgreSQL database and checks it there; exit status"
                        + " 1 if the notebook had damages when it was backed up.")
final class RestoreCommand implements Callable<Integer> {
    @Mixin
    private DatabaseOptions options;

    @Parameters(paramLabel = "FILE.zip", description = "A file that backup wrote.")
    private Path file;

    @Override
    public Integer call() throws IOException {
        Restore.Restored restored = options.restore(file);
        restored.damages().forEach(System.out::println);
        System.out.println("Restored " + restored.cover().rows() + " rows as they were at "
                + restored.cover().madeAt() + "; "
                + (restored.damages().isEmpty()
                        ? "every revision matches its checksum."
                        : restored.damages().size() + " damages were in it already."));
        return restored.damages().isEmpty() ? 0 : 1;
    }
}
