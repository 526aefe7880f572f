package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import rosinbook.store.Database;
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
