package rosinbook.testing;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.UUID;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;
import org.testcontainers.utility.DockerImageName;
import rosinbook.store.Database;

/**
 * One PostgreSQL for all tests of a run, with a database of its own for whoever asks.
 *
 * <p>Its databases sort and fold text as people do (ICU, American English) and not by bytes as the embedded one does, so that
 * what leans on the database's own order of text is found out.
 */
public final class PostgresServer {
    private static final String MIGRATED = "rosinbook_migrated";

    private static PostgreSQLContainer container;
    private static boolean isTemplateMade;

    private PostgresServer() {}

    /**
     * How a database is reached.
     *
     * @param url as the program's {@code --database} takes it
     */
    public record Address(String url, String user, String password) {
        /** The program's own way in. */
        public Database open() {
            return Database.postgresql(url, user, password);
        }

        /** A way in past the program. */
        public Connection connect() throws SQLException {
            return DriverManager.getConnection(url, user, password);
        }
    }

    /** A database without any tables; skips or fails the test where there is no Docker. */
    public static synchronized Address emptyDatabase() {
        start();
        return create(randomName(), "template0");
    }

    /** A copy of a database with all tables and nothing in them. */
    public static synchronized Address migratedDatabase() {
        start();
        if (!isTemplateMade) {
            create(MIGRATED, "template0").open().close();
            isTemplateMade = true;
        }
        return create(randomName(), MIGRATED);
    }

    /** {@link #migratedDatabase}, opened. */
    public static Database freshDatabase() {
        return migratedDatabase().open();
    }

    private static void start() {
        if (container != null) {
            return;
        }
        Needs.met(
                DockerClientFactory.instance().isDockerAvailable(),
                "tests on PostgreSQL need Docker; install it and start its service");
        String image = System.getenv().getOrDefault("ROSINBOOK_TEST_POSTGRES", "postgres:15.18-alpine");
        PostgreSQLContainer starting =
                new PostgreSQLContainer(DockerImageName.parse(image).asCompatibleSubstituteFor("postgres"));
        // Nothing of it need outlive the run, and nobody tidies up while rows are counted.
        starting.setCommand("postgres", "-c", "fsync=off", "-c", "autovacuum=off");
        starting.start();
        container = starting;
    }

    private static String randomName() {
        return "t" + UUID.randomUUID().toString().replace("-", "");
    }

    private static Address create(String name, String template) {
        String order = template.equals("template0") ? " LOCALE_PROVIDER icu ICU_LOCALE 'en-US' ENCODING 'UTF8'" : "";
        try (Connection connection = address(container.getDatabaseName()).connect();
                var statement = connection.createStatement()) {
            statement.execute("CREATE DATABASE " + name + " TEMPLATE " + template + order);
        } catch (SQLException problem) {
            throw new IllegalStateException("no fresh database", problem);
        }
        return address(name);
    }

    private static Address address(String name) {
        String url = "jdbc:postgresql://" + container.getHost() + ":" + container.getMappedPort(5432) + "/" + name;
        return new Address(url, container.getUsername(), container.getPassword());
    }
}
