package rosinbook.cli;

import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import rosinbook.store.Archive;
import rosinbook.store.Database;

/** {@code rosinbook verify}. */
@Command(
        name = "verify",
        mixinStandardHelpOptions = true,
        description =
                "Checks every revision against its checksum and says what is damaged; exit status 1 if anything is.")
final class VerifyCommand implements Callable<Integer> {
    @Mixin
    private DatabaseOptions options;

    @Override
    public Integer call() {
        try (Database database = options.open()) {
            Archive.Verified verified =
                    DatabaseOptions.archive(database, Clock.systemUTC()).verify();
            verified.damages().forEach(System.out::println);
            System.out.println(verified.revisions() + " revisions checked, "
                    + (verified.damages().isEmpty()
                            ? "all whole."
                            : verified.damages().size() + " damages."));
            return verified.damages().isEmpty() ? 0 : 1;
        }
    }
}
