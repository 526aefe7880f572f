package rosinbook.cli;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Where a running service keeps its daily backups. */
final class BackupOptions {
    @Option(
            names = "--backups",
            paramLabel = "FOLDER",
            defaultValue = "${env:ROSINBOOK_BACKUPS}",
            description =
                    "Folder for a backup every day, or off (default: the folder backups within the notebook's; off"
                            + " for a PostgreSQL database). Kept are those of the last 7 days, one a week for 5 weeks and one a"
                            + " month for 12 months.")
    private String folder;

    /** Empty if none are made. */
    Optional<Path> folder(DatabaseOptions database) {
        if (folder == null || folder.isBlank()) {
            return database.folder().map(DatabaseOptions::backups);
        }
        return folder.equals("off") ? Optional.empty() : Optional.of(Path.of(folder));
    }
}
