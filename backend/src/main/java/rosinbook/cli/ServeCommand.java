package rosinbook.cli;

import java.time.Clock;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import rosinbook.store.Database;
import rosinbook.web.Server;

/** {@code rosinbook serve}. */
@Command(
        name = "serve",
        mixinStandardHelpOptions = true,
        description = "Opens the notebook to a browser on this computer.")
final class ServeCommand implements Runnable {
    @Mixin
    private DatabaseOptions options;

    @Option(
            names = "--port",
            paramLabel = "PORT",
            defaultValue = "8017",
            description = "Port on the loopback address; 0 for any free one (default: ${DEFAULT-VALUE}).")
    private int port;

    @Override
    public void run() {
        Database database = options.open();
        Server server = start(database);
        CountDownLatch stopped = new CountDownLatch(1);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            server.close();
            database.close();
            stopped.countDown();
        }));
        System.out.println("Rosinbook is open at " + server.address() + " (stop with Ctrl-C)");
        awaitQuietly(stopped);
    }

    private Server start(Database database) {
        try {
            return Server.start(database, port, Clock.systemDefaultZone());
        } catch (RuntimeException problem) {
            database.close();
            throw new IllegalArgumentException(
                    "port " + port + " cannot be used; another program may listen there. Choose one with --port",
                    problem);
        }
    }

    private static void awaitQuietly(CountDownLatch stopped) {
        try {
            stopped.await();
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
