package rosinbook.cli;

import java.time.Clock;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import rosinbook.example.ExampleSeason;
import rosinbook.store.Database;
import rosinbook.store.DatabaseSheetStore;

/** {@code rosinbook example}. */
@Command(
        name = "example",
        mixinStandardHelpOptions = true,
        description = "Fills an empty notebook with a season of an invented player.")
final class ExampleCommand implements Callable<Integer> {
    @Mixin
    private DatabaseOptions options;

    @Mixin
    private NotebookOptions notebooks;

    @Override
    public Integer call() {
        Clock clock = Clock.systemDefaultZone();
        try (Database database = options.open()) {
            DatabaseSheetStore store = notebooks.sheets(database, clock);
            System.out.println("Wrote " + ExampleSeason.writeInto(store, LocalDate.now(clock)) + " sheets.");
            return 0;
        }
    }
}
