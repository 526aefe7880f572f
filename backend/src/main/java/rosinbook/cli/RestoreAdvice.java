package rosinbook.cli;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import rosinbook.store.BackupFolder;
import rosinbook.store.DatabaseDamaged;

/** What to do about a damaged notebook, down to the command line. */
final class RestoreAdvice {
    private RestoreAdvice() {}

    /** The problem, and what to do about it if the command named an embedded notebook. */
    static String sentence(DatabaseDamaged problem, CommandLine command) {
        Optional<DatabaseOptions> options = mixin(command, DatabaseOptions.class);
        Optional<Path> folder = options.flatMap(DatabaseOptions::folder);
        if (folder.isEmpty()) {
            return problem.getMessage();
        }
        Optional<Path> backups = mixin(command, BackupOptions.class)
                .map(each -> each.folder(options.get()))
                .orElse(folder.map(DatabaseOptions::backups));
        return sentence(problem, folder.get(), backups);
    }

    private static <T> Optional<T> mixin(CommandLine command, Class<T> type) {
        return command.getCommandSpec().mixins().values().stream()
                .map(CommandLine.Model.CommandSpec::userObject)
                .filter(type::isInstance)
                .map(type::cast)
                .findFirst();
    }

    private static String sentence(DatabaseDamaged problem, Path folder, Optional<Path> backups) {
        List<BackupFolder.Kept> newest =
                backups.map(each -> new BackupFolder(each).newestWhole()).orElse(List.of());
        String advice =
                switch (newest.size()) {
                    case 0 ->
                        " No whole backup was found"
                                + backups.map(each -> " in " + each).orElse("")
                                + ". If you keep one elsewhere, rename the folder and restore that one with: "
                                + command("restore", "FILE.zip", "--data", quoted(folder));
                    case 1 ->
                        howTo(
                                absolute(folder),
                                absolute(backups.get().resolve(newest.get(0).name())));
                    default -> choice(absolute(folder), absolute(backups.get()), newest);
                };
        return problem.getMessage() + "." + advice;
    }

    private static Path absolute(Path path) {
        return path.toAbsolutePath().normalize();
    }

    /** The notebook itself can no longer tell which of them is its own. */
    private static String choice(Path folder, Path backups, List<BackupFolder.Kept> newest) {
        StringBuilder text =
                new StringBuilder(" In " + backups + " are backups of several notebooks. The newest whole ones are:");
        for (BackupFolder.Kept kept : newest) {
            text.append(System.lineSeparator()).append("  ").append(kept.name());
            kept.begun().ifPresent(begun -> text.append(", of a notebook begun at ")
                    .append(begun.truncatedTo(ChronoUnit.SECONDS)));
        }
        Path aside = aside(folder);
        Path moved = backups.startsWith(folder) ? aside.resolve(folder.relativize(backups)) : backups;
        return text + System.lineSeparator()
                + "Rename the folder, so that nothing in it is lost, and restore the one that is this notebook's:"
                + System.lineSeparator() + "  mv " + quoted(folder) + " " + quoted(aside)
                + System.lineSeparator() + "  "
                + command("restore", quoted(moved.resolve("FILE.zip")), "--data", quoted(folder));
    }

    private static Path aside(Path folder) {
        Path aside = folder.resolveSibling(folder.getFileName() + "-damaged");
        for (int number = 2; Files.exists(aside); number++) {
            aside = folder.resolveSibling(folder.getFileName() + "-damaged-" + number);
        }
        return aside;
    }

    private static String howTo(Path folder, Path backup) {
        Path aside = aside(folder);
        Path moved = backup.startsWith(folder) ? aside.resolve(folder.relativize(backup)) : backup;
        return System.lineSeparator() + "The newest whole backup is " + backup + "."
                + " Rename the folder, so that nothing in it is lost, and restore it:"
                + System.lineSeparator() + "  mv " + quoted(folder) + " " + quoted(aside)
                + System.lineSeparator() + "  " + command("restore", quoted(moved), "--data", quoted(folder));
    }

    private static String quoted(Path path) {
        String text = path.toString();
        return text.matches("[\\w/.:\\\\-]+") ? text : "'" + text.replace("'", "'\\''") + "'";
    }

    /** As this program was started. */
    private static String command(String... words) {
        String program = "rosinbook";
        try {
            Path code = Path.of(Main.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
            if (code.toString().endsWith(".jar")) {
                program = "java -jar " + quoted(code);
            }
        } catch (URISyntaxException | SecurityException unknown) {
            // the plain name will do
        }
        return program + " " + String.join(" ", words);
    }
}
