package rosinbook.cli;

import java.util.List;
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
                "Checks every revision of every notebook against its checksum and says what is damaged; exit status 1 if anything is.")
final class VerifyCommand implements Callable<Integer> {
    @Mixin
    private DatabaseOptions options;

    @Override
    public Integer call() {
        try (Database database = options.openExisting()) {
            Archive.Verified verified = Archive.verifyEach(database);
            List<String> damages = verified.damages();
            damages.forEach(System.out::println);
            System.out.println(verified.revisions() + " revisions checked, "
                    + (damages.isEmpty() ? "all whole." : damages.size() + " damages."));
            return damages.isEmpty() ? 0 : 1;
        }
    }
}
