package rosinbook.cli;

import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import rosinbook.access.Access;
import rosinbook.access.Passphrase;
import rosinbook.store.Database;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.store.DatabaseSheetStore;

/** {@code rosinbook passphrase}. */
@Command(
        name = "passphrase",
        mixinStandardHelpOptions = true,
        description =
                "Sets or changes the owner's passphrase, read from the keyboard or the first line of the input, and"
                        + " ends every session.")
final class PassphraseCommand implements Callable<Integer> {
    @Mixin
    private DatabaseOptions options;

    @Override
    public Integer call() throws IOException {
        Passphrase passphrase = new Passphrase(typed());
        Clock clock = Clock.systemUTC();
        try (Database database = options.open()) {
            DatabaseSheetStore.onlyNotebook(database, clock.instant());
            new Access(new DatabaseAccessStore(database, DatabaseSheetStore.ONLY_NOTEBOOK), clock, new SecureRandom())
                    .setPassphrase(passphrase);
        }
        System.out.println("The passphrase is set.");
        return 0;
    }

    private static String typed() throws IOException {
        Console console = System.console();
        if (console != null) {
            return new String(console.readPassword("Passphrase: "));
        }
        BufferedReader input = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        String line = input.readLine();
        return line == null ? "" : line;
    }
}
