package rosinbook.cli;

import java.nio.file.Path;
import java.time.Clock;
import picocli.CommandLine.Option;
import rosinbook.notebook.Notebook;
import rosinbook.store.Archive;
import rosinbook.store.Database;
import rosinbook.store.DatabaseSheetStore;

/** Which notebook a command works on. */
final class DatabaseOptions {
    @Option(
            names = "--data",
            paramLabel = "FOLDER",
            defaultValue = "${env:ROSINBOOK_DATA:-data}",
            description = "Folder of the notebook (default: ${DEFAULT-VALUE}).")
    private Path folder;

    @Option(
            names = "--database",
            paramLabel = "URL",
            defaultValue = "${env:ROSINBOOK_DATABASE}",
            description = "A PostgreSQL database instead, as jdbc:postgresql://host/name; user and password come from"
                    + " ROSINBOOK_DATABASE_USER and ROSINBOOK_DATABASE_PASSWORD.")
    private String url;

    Database open() {
        if (url == null || url.isBlank()) {
            return Database.inFolder(folder);
        }
        return Database.postgresql(
                url, environment("ROSINBOOK_DATABASE_USER"), environment("ROSINBOOK_DATABASE_PASSWORD"));
    }

    private static String environment(String name) {
        String value = System.getenv(name);
        return value == null ? "" : value;
    }

    static Notebook notebook(Database database, Clock clock) {
        return new Notebook(DatabaseSheetStore.onlyNotebook(database, clock.instant()), clock);
    }

    static Archive archive(Database database, Clock clock) {
        DatabaseSheetStore.onlyNotebook(database, clock.instant());
        return new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK);
    }
}
