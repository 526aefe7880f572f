package rosinbook.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.jooq.DSLContext;
import org.jooq.SQLDialect;
import org.jooq.conf.RenderQuotedNames;
import org.jooq.conf.Settings;
import org.jooq.exception.DataAccessException;
import org.jooq.impl.DSL;

/** An open database with its schema brought up to date. Safe for use by several threads; close it when done. */
public final class Database implements AutoCloseable {
    private final HikariDataSource pool;
    private final DSLContext sql;
    private final boolean isH2;

    /** One writer at a time: H2 takes two that wait for the same row to be a deadlock, and has one log to write to anyway. */
    private final ReentrantLock embeddedWriting = new ReentrantLock(true);

    private Database(HikariConfig config, SQLDialect dialect) {
        pool = connected(config);
        isH2 = dialect == SQLDialect.H2;
        Settings settings = new Settings()
                .withRenderQuotedNames(RenderQuotedNames.EXPLICIT_DEFAULT_UNQUOTED)
                .withRenderSchema(false);
        sql = DSL.using(pool, dialect, settings);
        migrate();
    }

    private static HikariDataSource connected(HikariConfig config) {
        try {
            return new HikariDataSource(config);
        } catch (RuntimeException problem) {
            throw new DatabaseUnavailable(reason(problem), problem);
        }
    }

    private void migrate() {
        try {
            Flyway.configure()
                    .dataSource(pool)
                    .locations("classpath:migrations")
                    .load()
                    .migrate();
        } catch (FlywayException problem) {
            pool.close();
            throw new DatabaseUnavailable("its tables could not be brought up to date", problem);
        }
    }

    private static String reason(Throwable problem) {
        for (Throwable cause = problem; cause != null; cause = cause.getCause()) {
            String message = String.valueOf(cause.getMessage());
            if (message.contains("already in use") || message.contains("Locked by another process")) {
                return "another Rosinbook has it open; stop that one first";
            }
        }
        return "the database does not answer or its file cannot be read";
    }

    /**
     * The embedded database in this folder, made if it is not there.
     *
     * @throws DatabaseUnavailable if it cannot be opened
     */
    public static Database inFolder(Path folder) {
        return h2("jdbc:h2:file:" + folder.toAbsolutePath().resolve("rosinbook"));
    }

    /** An embedded database in memory, gone when closed. */
    public static Database inMemory(String name) {
        return h2("jdbc:h2:mem:" + name);
    }

    private static Database h2(String url) {
        HikariConfig config = new HikariConfig();
        config.setJdbcUrl(url + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE");
        config.setUsername("rosinbook");
        config.setPassword("");
        config.setMaximumPoolSize(8);
        return new Database(config, SQLDialect.H2);
    }

    /**
     * A PostgreSQL database.
     *
     * @param jdbcUrl beginning {@code jdbc:postgresql:}
     * @throws DatabaseUnavailable if it does not answer
     * @throws IllegalArgumentException if the address is of another database
     */
    public static Database postgresql(String jdbcUrl, String user, String password) {
        if (!jdbcUrl.startsWith("jdbc:postgresql:")) {
            throw new IllegalArgumentException("the database address must begin with jdbc:postgresql:");
        }
        HikariConfig config = new HikariConfig();
        config.setJdbcUrl(jdbcUrl);
        config.setUsername(user);
        config.setPassword(password);
        config.setMaximumPoolSize(10);
        return new Database(config, SQLDialect.POSTGRES);
    }

    /** Runs changes in one transaction; when this returns they are on the disk. */
    <T> T change(Function<DSLContext, T> work) {
        if (!isH2) {
            return transaction(work);
        }
        embeddedWriting.lock();
        try {
            T result = transaction(work);
            sql.execute("CHECKPOINT SYNC");
            return result;
        } finally {
            embeddedWriting.unlock();
        }
    }

    private <T> T transaction(Function<DSLContext, T> work) {
        return sql.transactionResult(transaction -> work.apply(transaction.dsl()));
    }

    /** Reads in one transaction, from one consistent state. */
    <T> T look(Function<DSLContext, T> work) {
        return sql.transactionResult(transaction -> {
            DSLContext dsl = transaction.dsl();
            dsl.execute(
                    isH2
                            ? "SET SESSION CHARACTERISTICS AS TRANSACTION ISOLATION LEVEL SNAPSHOT"
                            : "SET TRANSACTION ISOLATION LEVEL REPEATABLE READ READ ONLY");
            return work.apply(dsl);
        });
    }

    /** Whether the database answers. */
    public boolean isAlive() {
        try {
            return sql.fetchExists(DSL.selectOne());
        } catch (DataAccessException problem) {
            return false;
        }
    }

    @Override
    public void close() {
        pool.close();
    }
}
