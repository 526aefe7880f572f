package rosinbook.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.LocalDate;
import rosinbook.access.Access;
import rosinbook.example.ExampleSeason;
import rosinbook.notebook.Notebook;
import rosinbook.share.Shares;
import rosinbook.store.Archive;
import rosinbook.store.Database;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.store.DatabaseShareStore;
import rosinbook.store.DatabaseSheetStore;

/** The running service; everything it is made of is wired here. Close it to stop. */
public final class Server implements AutoCloseable {
    private final Javalin javalin;
    private final Listening listening;

    private Server(Javalin javalin, Listening listening) {
        this.javalin = javalin;
        this.listening = listening;
    }

    /**
     * Starts to listen on the loopback address.
     *
     * @param database stays open until its owner closes it
     * @param port 0 for any free one
     */
    public static Server start(Database database, int port, Clock clock) {
        return start(database, Listening.here(port), clock);
    }

    /**
     * Starts to listen.
     *
     * @param database stays open until its owner closes it
     * @throws IllegalArgumentException if it can be reached from elsewhere and the owner has no passphrase
     */
    public static Server start(Database database, Listening listening, Clock clock) {
        DatabaseSheetStore store = DatabaseSheetStore.onlyNotebook(database, clock.instant());
        Notebook notebook = new Notebook(store, clock);
        Shares shares = new Shares(
                notebook,
                new DatabaseShareStore(database, DatabaseSheetStore.ONLY_NOTEBOOK),
                clock,
                new SecureRandom());
        Access access = new Access(
                new DatabaseAccessStore(database, DatabaseSheetStore.ONLY_NOTEBOOK), clock, new SecureRandom());
        if (listening.needsSignIn() && !access.hasPassphrase()) {
            throw new IllegalArgumentException(
                    "to be reached from elsewhere, this notebook needs its owner's passphrase;"
                            + " set one with: rosinbook passphrase");
        }
        Guard guard = new Guard(listening);
        SignInResource signIn = new SignInResource(access, listening);
        LevelUploads uploads = new LevelUploads(clock);
        Javalin javalin = Javalin.create(config -> {
            settings(config);
            config.events.serverStopped(uploads::close);
            config.routes.before(exchange -> {
                Guard.setHeaders(exchange);
                guard.check(exchange);
                signIn.check(exchange);
            });
            signIn.register(config.routes);
            new HealthResource(database).register(config.routes);
            Problems.register(config.routes, notebook);
            new TonightResource(notebook, clock).register(config.routes);
            new BrowseResource(notebook).register(config.routes);
            new SharesResource(shares, listening).register(config.routes);
            new ArchiveResource(new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK), clock).register(config.routes);
            new ExampleResource(() -> ExampleSeason.writeInto(store, LocalDate.now(clock))).register(config.routes);
            new OpenApiResource().register(config.routes);
            new LevelsResource(notebook, uploads, clock).register(config.routes);
            new SetlistsResource(notebook).register(config.routes);
            new RecipesResource(notebook).register(config.routes);
            new TakesResource(notebook).register(config.routes);
            new RigsResource(notebook).register(config.routes);
            new WiringBenchResource(notebook).register(config.routes);
            new SheetsResource(notebook).register(config.routes);
            new PagesResource().register(config.routes);
        });
        return new Server(javalin.start(listening.address(), listening.port()), listening);
    }

    private static void settings(JavalinConfig config) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.http.prefer405over404 = true;
        config.jetty.multipartConfig.maxTotalRequestSize(LevelUploads.MOST_BYTES, SizeUnit.BYTES);
    }

    /** Where it can be reached, such as {@code http://127.0.0.1:8017/}. */
    public String address() {
        return listening.linkBase("127.0.0.1:" + javalin.port()) + "/";
    }

    Javalin javalin() {
        return javalin;
    }

    @Override
    public void close() {
        javalin.stop();
    }
}
