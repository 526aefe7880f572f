package rosinbook.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;
import rosinbook.store.Database;
import rosinbook.store.Restore;

/** Which database a command works on. */
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
        return folder().isPresent() ? Database.inFolder(folder) : Database.postgresql(url, user(), password());
    }

    /** For what only reads: a place without a notebook is a slip, not a wish for a new one. */
    Database openExisting() {
        return folder().isPresent()
                ? Database.existingInFolder(folder)
                : Database.existingPostgresql(url, user(), password());
    }

    /** Folder of an embedded notebook; empty for a PostgreSQL database. */
    Optional<Path> folder() {
        return url == null || url.isBlank() ? Optional.of(folder) : Optional.empty();
    }

    /** Where an embedded notebook keeps its backups unless told otherwise. */
    static Path backups(Path folder) {
        return folder.resolve("backups");
    }

    Restore.Restored restore(Path backup) throws IOException {
        return folder().isPresent()
                ? Restore.intoFolder(backup, folder)
                : Restore.intoPostgresql(backup, url, user(), password());
    }

    private static String user() {
        return environment("ROSINBOOK_DATABASE_USER");
    }

    private static String password() {
        return environment("ROSINBOOK_DATABASE_PASSWORD");
    }

    private static String environment(String name) {
        String value = System.getenv(name);
        return value == null ? "" : value;
    }
}
