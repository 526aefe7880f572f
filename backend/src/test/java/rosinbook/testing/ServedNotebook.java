package rosinbook.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import rosinbook.access.Access;
import rosinbook.access.Passphrase;
import rosinbook.access.PlayerName;
import rosinbook.example.ExampleSeason;
import rosinbook.store.BackupFolder;
import rosinbook.store.Backups;
import rosinbook.store.Database;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.store.DatabaseSheetStore;
import rosinbook.web.Housekeeping;
import rosinbook.web.Listening;
import rosinbook.web.Server;

/** A notebook of its own on a real server, on the evening for which the example season plans its last set. */
public final class ServedNotebook implements AutoCloseable {
    public static final Instant EVENING = Instant.parse("2026-11-19T18:00:00Z");
    public static final LocalDate TODAY = LocalDate.of(2026, 11, 19);

    private final Database database = Database.inMemory("browsed-" + UUID.randomUUID());
    private final Clock clock = Clock.offset(Clock.systemUTC(), Duration.between(Instant.now(), EVENING));
    private final String address;
    private final Listening listening;
    private final Path backups =
            Path.of("target", "test-backups", UUID.randomUUID().toString());
    private Server server;

    private ServedNotebook() {
        server = start(Listening.here(0));
        address = server.address();
        listening = Listening.here(URI.create(address).getPort());
    }

    /** As it is reached from elsewhere, where players sign in. */
    private ServedNotebook(String keeper, String passphrase) {
        int port = freePort();
        address = "http://127.0.0.1:" + port + "/";
        listening = new Listening("127.0.0.1", port, Optional.of(URI.create(address)));
        writeExample();
        new Access(new DatabaseAccessStore(database), clock, new SecureRandom())
                .setPassphrase(new PlayerName(keeper), new Passphrase(passphrase));
        server = start(listening);
    }

    /** The public address must be known before the service starts. */
    private static int freePort() {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }

    private Server start(Listening where) {
        return Server.start(
                database,
                where,
                clock,
                new Housekeeping(
                        Optional.empty(), Optional.of(new Backups(database, new BackupFolder(backups), clock))));
    }

    public static ServedNotebook empty() {
        return new ServedNotebook();
    }

    public static ServedNotebook withExample() {
        ServedNotebook notebook = new ServedNotebook();
        notebook.writeExample();
        return notebook;
    }

    /** The example, owned by a keeper who signs in like every other player. */
    public static ServedNotebook hosted(String keeper, String passphrase) {
        return new ServedNotebook(keeper, passphrase);
    }

    private void writeExample() {
        ExampleSeason.writeInto(DatabaseSheetStore.onlyNotebook(database, EVENING), TODAY);
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
        server = start(listening);
    }

    @Override
    public void close() {
        server.close();
        database.close();
    }
}
