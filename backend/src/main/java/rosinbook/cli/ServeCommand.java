package rosinbook.cli;

import io.javalin.util.JavalinBindException;
import java.net.SocketException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import rosinbook.log.LogFormat;
import rosinbook.log.Logs;
import rosinbook.store.BackupFolder;
import rosinbook.store.Backups;
import rosinbook.store.Database;
import rosinbook.store.DatabaseUnavailable;
import rosinbook.web.Housekeeping;
import rosinbook.web.Listening;
import rosinbook.web.MetricsKey;
import rosinbook.web.Server;

/** {@code rosinbook serve}. */
@Command(name = "serve", mixinStandardHelpOptions = true, description = "Opens the notebook to a browser.")
final class ServeCommand implements Runnable {
    private static final Logger LOG = LoggerFactory.getLogger(ServeCommand.class);

    @Mixin
    private DatabaseOptions options;

    @Mixin
    private BackupOptions backupOptions;

    @Option(
            names = "--port",
            paramLabel = "PORT",
            defaultValue = "8017",
            description = "Port to listen on; 0 for any free one (default: ${DEFAULT-VALUE}).")
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
            description = "How people reach it from elsewhere, such as https://band.example; players"
                    + " sign in with name and passphrase.")
    private String publicAddress;

    @Option(
            names = "--behind-proxy",
            defaultValue = "${env:ROSINBOOK_BEHIND_PROXY:-false}",
            fallbackValue = "true",
            description = "Every request comes through a web server of yours, which writes from where it has it at the"
                    + " end of X-Forwarded-For: wrong tries at signing in are counted by that address.")
    private boolean isBehindProxy;

    @Option(
            names = "--log",
            paramLabel = "FORM",
            defaultValue = "${env:ROSINBOOK_LOG}",
            description = "json: a line of JSON for every request, and for what goes wrong; plain: warnings and errors"
                    + " only (default: json with --public-address, else plain).")
    private String log;

    @Override
    public void run() {
        Logs.use(logFormat());
        Optional<MetricsKey> metricsKey =
                given(System.getenv("ROSINBOOK_METRICS_KEY")).map(MetricsKey::new);
        Listening listening = new Listening(address, port, publicAddress(), isBehindProxy);
        Clock clock = Clock.systemDefaultZone();
        Optional<Path> folder = backupOptions.folder(options);
        Database database = options.open();
        Optional<Backups> backups = folder.map(each -> new Backups(database, new BackupFolder(each), clock));
        Server server = start(database, listening, clock, new Housekeeping(metricsKey, backups));
        BackingUp backingUp = BackingUp.start(options.folder(), database, backups, clock);
        CountDownLatch stopped = new CountDownLatch(1);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            server.close();
            backingUp.close();
            database.close();
            stopped.countDown();
        }));
        System.out.println("Rosinbook is open at " + server.address() + " (stop with Ctrl-C)");
        awaitQuietly(stopped);
    }

    private LogFormat logFormat() {
        String form = given(log).orElse(publicAddress().isPresent() ? "json" : "plain");
        return switch (form) {
            case "json" -> LogFormat.JSON;
            case "plain" -> LogFormat.PLAIN;
            default -> throw new IllegalArgumentException("--log is " + form + "; say json or plain");
        };
    }

    private Optional<URI> publicAddress() {
        return given(publicAddress).map(URI::create);
    }

    private static Optional<String> given(String text) {
        return Optional.ofNullable(text).filter(given -> !given.isBlank());
    }

    static Server start(Database database, Listening listening, Clock clock, Housekeeping housekeeping) {
        if (listening.hidesClients()) {
            LOG.warn(
                    "Everybody counts as one address: a few wrong passphrases of anybody's keep all from signing in."
                            + " If a web server stands in front, have it add callers to X-Forwarded-For, and give --behind-proxy.");
        }
        try {
            return Server.start(database, listening, clock, housekeeping);
        } catch (RuntimeException problem) {
            database.close();
            if (!(problem instanceof DatabaseUnavailable) && isOfListening(problem)) {
                throw new IllegalArgumentException(
                        "port " + listening.port() + " cannot be used at " + listening.address()
                                + "; another program may listen there, or the address be none of this computer's."
                                + " Choose others with --port and --listen",
                        problem);
            }
            throw problem;
        }
    }

    private static boolean isOfListening(Throwable problem) {
        for (Throwable cause = problem; cause != null; cause = cause.getCause()) {
            if (cause instanceof JavalinBindException || cause instanceof SocketException) {
                return true;
            }
        }
        return false;
    }

    private static void awaitQuietly(CountDownLatch stopped) {
        try {
            stopped.await();
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
