package rosinbook.cli;

import java.time.Clock;
import java.util.List;
import java.util.UUID;
import picocli.CommandLine.Option;
import rosinbook.access.NotebookEntry;
import rosinbook.notebook.Notebook;
import rosinbook.store.Archive;
import rosinbook.store.Database;
import rosinbook.store.DatabaseNotebookStore;
import rosinbook.store.DatabaseSheetStore;

/** Which of several notebooks a command works on. */
final class NotebookOptions {
    @Option(
            names = "--notebook",
            paramLabel = "TITLE",
            description = "Title or id of the notebook, if there are several (default: the first one made).")
    private String wanted;

    private UUID find(Database database, Clock clock) {
        DatabaseSheetStore.onlyNotebook(database, clock.instant());
        if (wanted == null) {
            return DatabaseSheetStore.ONLY_NOTEBOOK;
        }
        List<NotebookEntry> all = new DatabaseNotebookStore(database).all();
        List<NotebookEntry> fitting = all.stream()
                .filter(entry ->
                        entry.id().toString().equals(wanted) || entry.title().equalsIgnoreCase(wanted))
                .toList();
        if (fitting.size() != 1) {
            throw new IllegalArgumentException(
                    (fitting.isEmpty() ? "no notebook is" : "several notebooks are") + " called \"" + wanted
                            + "\"; there are:\n"
                            + String.join(
                                    "\n",
                                    all.stream()
                                            .map(entry -> "  " + entry.id() + "  " + entry.title())
                                            .toList()));
        }
        return fitting.get(0).id();
    }

    DatabaseSheetStore sheets(Database database, Clock clock) {
        return DatabaseSheetStore.of(database, find(database, clock));
    }

    Notebook notebook(Database database, Clock clock) {
        return new Notebook(sheets(database, clock), clock);
    }

    Archive archive(Database database, Clock clock) {
        return new Archive(database, find(database, clock));
    }
}
