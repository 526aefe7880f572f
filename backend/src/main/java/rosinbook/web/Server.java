package rosinbook.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.LocalDate;
import rosinbook.example.ExampleSeason;
import rosinbook.notebook.Notebook;
import rosinbook.share.Shares;
import rosinbook.store.Archive;
import rosinbook.store.Database;
import rosinbook.store.DatabaseShareStore;
import rosinbook.store.DatabaseSheetStore;

/** The running service; everything it is made of is wired here. Close it to stop. */
public final class Server implements AutoCloseable {
    private static final String LOOPBACK = "127.0.0.1";
    private static final long MAX_JSON_BYTES = 4_000_000;

    private final Javalin javalin;

    private Server(Javalin javalin) {
        this.javalin = javalin;
    }

    /**
     * Starts to listen on the loopback address.
     *
     * @param database stays open until its owner closes it
     * @param port 0 for any free one
     */
    public static Server start(Database database, int port, Clock clock) {
        DatabaseSheetStore store = DatabaseSheetStore.onlyNotebook(database, clock.instant());
        Notebook notebook = new Notebook(store, clock);
        Shares shares = new Shares(
                notebook,
                new DatabaseShareStore(database, DatabaseSheetStore.ONLY_NOTEBOOK),
                clock,
                new SecureRandom());
        Javalin javalin = Javalin.create(config -> {
            settings(config);
            config.routes.before(exchange -> {
                Guard.setHeaders(exchange);
                Guard.check(exchange);
            });
            Problems.register(config.routes);
            new TonightResource(notebook, clock).register(config.routes);
            new BrowseResource(notebook).register(config.routes);
            new SharesResource(shares).register(config.routes);
            new ArchiveResource(new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK), clock).register(config.routes);
            new ExampleResource(() -> ExampleSeason.writeInto(store, LocalDate.now(clock))).register(config.routes);
            new OpenApiResource().register(config.routes);
            new SetlistsResource(notebook).register(config.routes);
            new RecipesResource(notebook).register(config.routes);
            new RigsResource(notebook).register(config.routes);
            new SheetsResource(notebook).register(config.routes);
            new PagesResource().register(config.routes);
        });
        return new Server(javalin.start(LOOPBACK, port));
    }

    private static void settings(JavalinConfig config) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.http.prefer405over404 = true;
        config.http.maxRequestSize = MAX_JSON_BYTES;
    }

    /** Where it can be reached, such as {@code http://127.0.0.1:8080/}. */
    public String address() {
        return "http://" + LOOPBACK + ":" + javalin.port() + "/";
    }

    Javalin javalin() {
        return javalin;
    }

    @Override
    public void close() {
        javalin.stop();
    }
}
