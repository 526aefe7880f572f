package rosinbook.testing;

import java.util.UUID;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;
import org.testcontainers.utility.DockerImageName;
import rosinbook.store.Database;

/** One PostgreSQL for all tests of a run, with a fresh database for whoever asks. */
public final class PostgresServer {
    private static PostgreSQLContainer container;

    private PostgresServer() {}

    /** A fresh, empty database of a random name; skips or fails the test where there is no Docker. */
    public static synchronized Database freshDatabase() {
        Needs.met(
                DockerClientFactory.instance().isDockerAvailable(),
                "tests on PostgreSQL need Docker; install it and start its service");
        if (container == null) {
            String image = System.getenv().getOrDefault("ROSINBOOK_TEST_POSTGRES", "postgres:15-alpine");
            container = new PostgreSQLContainer(DockerImageName.parse(image).asCompatibleSubstituteFor("postgres"));
            container.start();
        }
        String name = "t" + UUID.randomUUID().toString().replace("-", "");
        try (var connection = java.sql.DriverManager.getConnection(
                        container.getJdbcUrl(), container.getUsername(), container.getPassword());
                var statement = connection.createStatement()) {
            statement.execute("CREATE DATABASE " + name);
        } catch (java.sql.SQLException problem) {
            throw new IllegalStateException("no fresh database", problem);
        }
        String url = "jdbc:postgresql://" + container.getHost() + ":" + container.getMappedPort(5432) + "/" + name;
        return Database.postgresql(url, container.getUsername(), container.getPassword());
    }
}
