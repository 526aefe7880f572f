package rosinbook.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.LocalDate;
import rosinbook.access.Access;
import rosinbook.access.Invitations;
import rosinbook.access.Notebooks;
import rosinbook.example.ExampleSeason;
import rosinbook.store.Database;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.store.DatabaseNotebookStore;
import rosinbook.store.DatabaseSheetStore;

/** The running service; everything it is made of is wired here. Close it to stop; what it has accepted is answered first. */
public final class Server implements AutoCloseable {
    private final Javalin javalin;
    private final Listening listening;
    private final Stopping stopping;

    private Server(Javalin javalin, Listening listening, Stopping stopping) {
        this.javalin = javalin;
        this.listening = listening;
        this.stopping = stopping;
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
     * @throws IllegalArgumentException if it can be reached from elsewhere and the keeper has no passphrase
     */
    public static Server start(Database database, Listening listening, Clock clock) {
        return start(database, listening, clock, Housekeeping.NONE);
    }

    /**
     * Starts to listen.
     *
     * @param database stays open until its owner closes it
     * @throws IllegalArgumentException if it can be reached from elsewhere and the keeper has no passphrase
     */
    public static Server start(Database database, Listening listening, Clock clock, Housekeeping housekeeping) {
        return start(database, listening, clock, housekeeping, Patience.USUAL);
    }

    static Server start(
            Database database, Listening listening, Clock clock, Housekeeping housekeeping, Patience patience) {
        DatabaseSheetStore.onlyNotebook(database, clock.instant());
        DatabaseAccessStore players = new DatabaseAccessStore(database);
        Access access = new Access(players, clock, new SecureRandom());
        Notebooks notebooks = new Notebooks(new DatabaseNotebookStore(database), players, clock);
        Invitations invitations = new Invitations(players, access, clock, new SecureRandom());
        Shelf shelf = new Shelf(database, clock);
        if (listening.needsSignIn() && !access.hasPassphrase()) {
            throw new IllegalArgumentException(
                    "to be reached from elsewhere, this notebook needs its keeper's passphrase;"
                            + " set one with: rosinbook passphrase");
        }
        Guard guard = new Guard(listening);
        Door door = new Door(access, notebooks, listening);
        LevelUploads uploads = new LevelUploads(clock);
        Workbench workbench = new Workbench(patience);
        Senders senders = new Senders(patience, listening);
        Metrics metrics = new Metrics(database);
        MetricsResource metricsResource = new MetricsResource(metrics, housekeeping.metricsKey());
        Stopping stopping = new Stopping();
        Javalin javalin = Javalin.create(config -> {
            settings(config);
            Doors.settings(config, listening, patience, senders);
            Frame.around(config, new Traffic(metrics), stopping);
            config.events.serverStopped(uploads::close);
            config.events.serverStopped(workbench::close);
            config.events.serverStopped(metrics::close);
            config.routes.before(exchange -> {
                RouteName.keep(exchange, config.unsafe.internalRouter);
                guard.setHeaders(exchange);
                HeadLimits.check(exchange);
                if (!metricsResource.isOpenedByKey(exchange)) {
                    guard.check(exchange);
                    door.enter(exchange);
                }
                senders.enter(exchange, door.isStranger(exchange));
            });
            config.routes.beforeMatched("/api/*", new OwnMethods(() -> config.unsafe.internalRouter.allHttpHandlers()));
            config.routes.beforeMatched(exchange -> {
                if (!metricsResource.isOpenedByKey(exchange)) {
                    door.allow(exchange);
                }
            });
            new SignInResource(access, listening).register(config.routes);
            new JoinResource(invitations, access, listening).register(config.routes);
            new HealthResource(database).register(config.routes);
            metricsResource.register(config.routes);
            Problems.register(config.routes, shelf);
            PastLimits.register(config.routes);
            new MeResource(access, notebooks, listening).register(config.routes);
            new PlayersResource(invitations, listening).register(config.routes);
            new NotebooksResource(notebooks, access, listening).register(config.routes);
            new TonightResource(shelf, clock).register(config.routes);
            new BrowseResource(shelf).register(config.routes);
            new SharesResource(shelf, listening).register(config.routes);
            new ArchiveResource(shelf, clock).register(config.routes);
            new BackupsResource(housekeeping.backups()).register(config.routes);
            new ExampleResource(shelf, store -> ExampleSeason.writeInto(store, LocalDate.now(clock)))
                    .register(config.routes);
            new OpenApiResource().register(config.routes);
            new LevelsResource(shelf, uploads, workbench, clock).register(config.routes);
            new SetlistsResource(shelf).register(config.routes);
            new RecipesResource(shelf).register(config.routes);
            new TakesResource(shelf, workbench).register(config.routes);
            new RigsResource(shelf).register(config.routes);
            new WiringBenchResource(shelf, workbench).register(config.routes);
            new SheetsResource(shelf).register(config.routes);
            new PagesResource().register(config.routes);
        });
        return new Server(javalin.start(listening.address(), listening.port()), listening, stopping);
    }

    private static void settings(JavalinConfig config) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.http.prefer405over404 = true;
    }

    /** Where it can be reached, such as {@code http://127.0.0.1:8017/}. */
    public String address() {
        return listening.opensAt(javalin.port());
    }

    Javalin javalin() {
        return javalin;
    }

    @Override
    public void close() {
        stopping.finish();
        javalin.stop();
    }
}
