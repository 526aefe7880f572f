package rosinbook.store;

import com.zaxxer.hikari.HikariConfig;
import java.util.Properties;
import javax.sql.DataSource;
import org.postgresql.Driver;
import org.postgresql.PGProperty;
import org.postgresql.ds.PGSimpleDataSource;

/** How PostgreSQL is reached, and what is told if it is not. */
final class PostgresPool {
    private static final int MOST_CONNECTIONS = 10;
    private static final int FEWEST_CONNECTIONS = 1;

    /** A request waits so long for a connection before it is answered that the database is away. */
    private static final long CONNECTION_MILLIS = 3_000;

    private static final long VALIDATION_MILLIS = 1_500;

    private PostgresPool() {}

    /** @throws IllegalArgumentException if the address is of another database */
    static HikariConfig config(String jdbcUrl, String user, String password) {
        if (!jdbcUrl.startsWith("jdbc:postgresql:") || Driver.parseURL(jdbcUrl, new Properties()) == null) {
            throw new IllegalArgumentException(
                    "the database address must begin with jdbc:postgresql: as in jdbc:postgresql://host/name");
        }
        HikariConfig config = new HikariConfig();
        config.setJdbcUrl(jdbcUrl);
        config.setUsername(user);
        config.setPassword(password);
        config.setMaximumPoolSize(MOST_CONNECTIONS);
        config.setMinimumIdle(FEWEST_CONNECTIONS);
        config.setConnectionTimeout(CONNECTION_MILLIS);
        config.setValidationTimeout(VALIDATION_MILLIS);
        config.addDataSourceProperty("ApplicationName", "rosinbook");
        config.addDataSourceProperty("connectTimeout", "3");
        config.addDataSourceProperty("tcpKeepAlive", "true");
        config.addDataSourceProperty("socketTimeout", "30");
        config.addDataSourceProperty("options", "-c lock_timeout=20s");
        return config;
    }

    /** Connections whose transactions see one state and change nothing, without saying so each time. */
    static HikariConfig readingOnly(HikariConfig writing) {
        HikariConfig config = new HikariConfig();
        writing.copyStateTo(config);
        config.setPoolName(null);
        config.setReadOnly(true);
        config.setTransactionIsolation("TRANSACTION_REPEATABLE_READ");
        return config;
    }

    /** Single connections to the same database, without a pool's limits on waiting. */
    static DataSource unpooled(HikariConfig config) {
        PGSimpleDataSource source = new PGSimpleDataSource();
        source.setUrl(config.getJdbcUrl());
        Properties given = new Properties();
        PGProperty.USER.set(given, config.getUsername());
        PGProperty.PASSWORD.set(given, config.getPassword());
        Properties said =
                Driver.parseURL(config.getJdbcUrl(), given); // what the address itself says counts, as in the pool
        source.setUser(PGProperty.USER.getOrDefault(said));
        source.setPassword(PGProperty.PASSWORD.getOrDefault(said));
        return source;
    }

    /** Why it could not be opened, and what to do. */
    static String reason(String jdbcUrl, Throwable problem) {
        Properties parts = Driver.parseURL(jdbcUrl, new Properties());
        String place = parts.getProperty("PGHOST") + ":" + parts.getProperty("PGPORT");
        String state = SqlTrouble.state(problem);
        if (state.startsWith("28")) {
            return "PostgreSQL at " + place + " does not accept the user or the password; check"
                    + " ROSINBOOK_DATABASE_USER and ROSINBOOK_DATABASE_PASSWORD";
        }
        if (state.equals("3D000")) {
            return "PostgreSQL at " + place + " has no database \"" + parts.getProperty("PGDBNAME")
                    + "\"; create it first";
        }
        if (state.startsWith("57P") || state.startsWith("53")) {
            return "PostgreSQL at " + place + " takes nobody in just now; try again in a moment";
        }
        return "PostgreSQL at " + place + " does not answer; check the address, and that it is running";
    }
}
