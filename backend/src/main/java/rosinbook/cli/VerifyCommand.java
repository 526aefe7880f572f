package rosinbook.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import rosinbook.access.NotebookEntry;
import rosinbook.store.Archive;
import rosinbook.store.Database;
import rosinbook.store.DatabaseNotebookStore;

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
            int revisions = 0;
            List<String> damages = new ArrayList<>();
            for (NotebookEntry entry : new DatabaseNotebookStore(database).all()) {
                Archive.Verified verified = new Archive(database, entry.id()).verify();
                revisions += verified.revisions();
                damages.addAll(verified.damages());
            }
            damages.forEach(System.out::println);
            System.out.println(revisions + " revisions checked, "
                    + (damages.isEmpty() ? "all whole." : damages.size() + " damages."));
            return damages.isEmpty() ? 0 : 1;
        }
    }
}
