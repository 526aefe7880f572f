package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import rosinbook.access.Access;
import rosinbook.access.Passphrase;
import rosinbook.log.LogFormat;
import rosinbook.store.Database;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.testing.Logged;
import rosinbook.web.Housekeeping;
import rosinbook.web.Listening;

/** What is understood of the command line, and what is said if the service cannot start. */
class ServeCommandTest {
    @Test
    void a_port_that_is_taken_is_named(@TempDir Path folder) throws Exception {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            StringWriter err = new StringWriter();
            int status = Main.commandLine()
                    .setErr(new PrintWriter(err, true))
                    .execute("serve", "--port", "" + taken.getLocalPort(), "--data", folder.toString());
            assertEquals(2, status);
            assertTrue(
                    err.toString()
                            .startsWith("serve: port " + taken.getLocalPort()
                                    + " cannot be used at 127.0.0.1; another program may listen there"),
                    err.toString());
        }
    }

    @Test
    void a_database_that_went_away_meanwhile_is_not_called_a_port() {
        Database database = Database.inMemory("gone");
        database.close();
        var problem = assertThrows(
                RuntimeException.class,
                () -> ServeCommand.start(database, Listening.here(0), Clock.systemUTC(), Housekeeping.NONE));
        assertFalse(String.valueOf(problem.getMessage()).contains("port"), problem.toString());
    }

    /** It does not encrypt by itself, so whoever comes by https comes through something, with the address of that. */
    @ParameterizedTest
    @CsvSource({
        "https://band.example, false, true",
        "https://band.example, true, false",
        "http://band.example, false, false",
        "http://band.example, true, false"
    })
    void an_encrypted_address_without_a_proxy_is_warned_of(String address, boolean isBehindProxy, boolean isWarned) {
        Clock clock = Clock.systemUTC();
        try (Database database = Database.inMemory("w" + UUID.randomUUID());
                Logged logged = new Logged(LogFormat.PLAIN)) {
            new Access(new DatabaseAccessStore(database), clock, new SecureRandom())
                    .setPassphrase(new Passphrase("four strings and a bow"));
            Listening listening = new Listening("127.0.0.1", 0, Optional.of(URI.create(address)), isBehindProxy);
            ServeCommand.start(database, listening, clock, Housekeeping.NONE).close();
            assertEquals(isWarned, logged.text().contains("--behind-proxy"), logged.text());
        }
    }

    /** The default stands in the environment. */
    @ParameterizedTest
    @CsvSource({"true, '', true", "true, --behind-proxy, true", "false, '', false", "false, --behind-proxy, true"})
    void behind_a_proxy_means_behind_a_proxy_whatever_the_default_is(
            String environment, String given, boolean isBehindProxy) {
        CommandLine serve = new CommandLine(new ServeCommand());
        serve.setDefaultValueProvider(
                spec -> spec.equals(serve.getCommandSpec().findOption("--behind-proxy")) ? environment : null);
        serve.parseArgs(given.isEmpty() ? new String[0] : new String[] {given});
        assertEquals(
                isBehindProxy,
                serve.getCommandSpec().findOption("--behind-proxy").<Boolean>getValue());
    }
}
