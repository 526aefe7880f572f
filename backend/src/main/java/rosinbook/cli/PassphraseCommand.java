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
import picocli.CommandLine.Option;
import rosinbook.access.Access;
import rosinbook.access.Passphrase;
import rosinbook.access.PlayerName;
import rosinbook.store.Database;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.store.DatabaseSheetStore;

/** {@code rosinbook passphrase}. */
@Command(
        name = "passphrase",
        mixinStandardHelpOptions = true,
        description =
                "Sets or changes a player's passphrase, read from the keyboard or the first line of the input, and"
                        + " ends their sessions.")
final class PassphraseCommand implements Callable<Integer> {
    @Mixin
    private DatabaseOptions options;

    @Option(
            names = "--player",
            paramLabel = "NAME",
            description = "Whose (default: the keeper's). The first one there is becomes the keeper, who invites the"
                    + " others; called \"owner\" if no name is given.")
    private String player;

    @Override
    public Integer call() throws IOException {
        Passphrase passphrase = new Passphrase(readable(typed()));
        Clock clock = Clock.systemUTC();
        try (Database database = options.open()) {
            DatabaseSheetStore.onlyNotebook(database, clock.instant());
            Access access = new Access(new DatabaseAccessStore(database), clock, new SecureRandom());
            if (player == null) {
                access.setPassphrase(passphrase);
            } else {
                access.setPassphrase(new PlayerName(player), passphrase);
            }
        }
        System.out.println("The passphrase is set.");
        return 0;
    }

    /** A letter that came in another encoding is not known any more, and another one would stand for it. */
    private static String readable(String typed) {
        if (typed.indexOf('\uFFFD') >= 0) {
            throw new IllegalArgumentException(
                    "the passphrase has letters that are not in UTF-8; set the terminal or the file to UTF-8, or choose"
                            + " others");
        }
        return typed;
    }

    private static String typed() throws IOException {
        Console console = System.console();
        if (console != null) {
            char[] typed = console.readPassword("Passphrase: ");
            return typed == null ? "" : new String(typed);
        }
        BufferedReader input = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        String line = input.readLine();
        return line == null ? "" : line;
    }
}
