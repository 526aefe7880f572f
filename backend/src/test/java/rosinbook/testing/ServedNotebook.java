package rosinbook.testing;

import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import rosinbook.example.ExampleSeason;
import rosinbook.store.Database;
import rosinbook.store.DatabaseSheetStore;
import rosinbook.web.Server;

/** A notebook of its own on a real server, on the evening for which the example season plans its last set. */
public final class ServedNotebook implements AutoCloseable {
    static final Instant EVENING = Instant.parse("2026-11-19T18:00:00Z");
    public static final LocalDate TODAY = LocalDate.of(2026, 11, 19);

    private final Database database = Database.inMemory("browsed-" + UUID.randomUUID());
    private final Clock clock = Clock.offset(Clock.systemUTC(), Duration.between(Instant.now(), EVENING));
    private final String address;
    private Server server;

    private ServedNotebook() {
        server = Server.start(database, 0, clock);
        address = server.address();
    }

    public static ServedNotebook empty() {
        return new ServedNotebook();
    }

    public static ServedNotebook withExample() {
        ServedNotebook notebook = new ServedNotebook();
        ExampleSeason.writeInto(DatabaseSheetStore.onlyNotebook(notebook.database, EVENING), TODAY);
        return notebook;
    }

    /** Where it is or was served; stays the same when it starts again. */
    public String address() {
        return address;
    }

    /** Nobody answers any more; what is written stays. */
    public void stop() {
        server.close();
    }

    /** Answers again where it did. */
    public void startAgain() {
        server = Server.start(database, URI.create(address).getPort(), clock);
    }

    @Override
    public void close() {
        server.close();
        database.close();
    }
}
