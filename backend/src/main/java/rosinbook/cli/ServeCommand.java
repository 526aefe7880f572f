package rosinbook.cli;

import java.net.URI;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import rosinbook.store.Database;
import rosinbook.web.Listening;
import rosinbook.web.Server;

/** {@code rosinbook serve}. */
@Command(name = "serve", mixinStandardHelpOptions = true, description = "Opens the notebook to a browser.")
final class ServeCommand implements Runnable {
    @Mixin
    private DatabaseOptions options;

    @Option(
            names = "--port",
            paramLabel = "PORT",
            defaultValue = "8017",
            description = "Port on the loopback address; 0 for any free one (default: ${DEFAULT-VALUE}).")
    private int port;

    @Option(
            names = "--listen",
            paramLabel = "ADDRESS",
            defaultValue = "127.0.0.1",
            description = "Address to listen on (default: this computer only). Any other needs --public-address and a"
                    + " passphrase.")
    private String address;

    @Option(
            names = "--public-address",
            paramLabel = "URL",
            defaultValue = "${env:ROSINBOOK_PUBLIC_ADDRESS}",
            description =
                    "How people reach it from elsewhere, such as https://band.example; they sign in with the owner's"
                            + " passphrase.")
    private String publicAddress;

    @Override
    public void run() {
        Listening listening = new Listening(address, port, publicAddress());
        Database database = options.open();
        Server server = start(database, listening);
        CountDownLatch stopped = new CountDownLatch(1);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            server.close();
            database.close();
            stopped.countDown();
        }));
        System.out.println("Rosinbook is open at " + server.address() + " (stop with Ctrl-C)");
        awaitQuietly(stopped);
    }

    private Optional<URI> publicAddress() {
        return Optional.ofNullable(publicAddress)
                .filter(text -> !text.isBlank())
                .map(URI::create);
    }

    private static Server start(Database database, Listening listening) {
        try {
            return Server.start(database, listening, Clock.systemDefaultZone());
        } catch (IllegalArgumentException problem) {
            database.close();
            throw problem;
        } catch (RuntimeException problem) {
            database.close();
            throw new IllegalArgumentException(
                    "port " + listening.port()
                            + " cannot be used; another program may listen there. Choose one with --port",
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
