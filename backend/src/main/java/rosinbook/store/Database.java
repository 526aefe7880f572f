package rosinbook.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.HikariPoolMXBean;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.flywaydb.core.api.FlywayException;
import org.jooq.DSLContext;
import org.jooq.SQLDialect;
import org.jooq.conf.RenderQuotedNames;
import org.jooq.conf.Settings;
import org.jooq.exception.DataAccessException;
import org.jooq.impl.DSL;

/**
 * An open database with its schema brought up to date. Safe for use by several threads; close it when done.
 *
 * <p>An embedded database closes itself when it cannot write its file. It is opened again for whoever asks next, so what
 * was kept stays readable, and writing works again as soon as there is room.
 */
public final class Database implements AutoCloseable {
    private static final int MOST_WAIT_MILLIS = 10_000;
    private static final int MOST_TRIES = 6;

    private volatile Memory memory = new Memory();
    private final Openings openings = new Openings(counted -> DatabaseShareStore.write(this, counted));
    private final HikariDataSource pool;
    private final HikariDataSource readingPool;
    private final DSLContext sql;
    private final DSLContext reading;

    /** For PostgreSQL outside the pool: bringing tables up to date may wait longer than a request may. */
    private final DataSource migrating;

    private final boolean isH2;
    private final Optional<DataFolder> folder;

    /** One writer at a time: H2 takes two that wait for the same row to be a deadlock, and has one log to write to anyway. */
    private final ReentrantLock embeddedWriting = new ReentrantLock(true);

    private Database(
            HikariConfig config,
            SQLDialect dialect,
            Optional<DataFolder> folder,
            Function<RuntimeException, RuntimeException> unopened) {
        this.folder = folder;
        pool = connected(config, unopened);
        isH2 = dialect == SQLDialect.H2;
        Settings settings = new Settings()
                .withRenderQuotedNames(RenderQuotedNames.EXPLICIT_DEFAULT_UNQUOTED)
                .withRenderSchema(false)
                .withExecuteLogging(false);
        sql = DSL.using(pool, dialect, settings);
        migrating = isH2 ? pool : PostgresPool.unpooled(config);
        readingPool = isH2 ? pool : connected(PostgresPool.readingOnly(config), unopened);
        reading = DSL.using(readingPool, dialect, settings);
    }

    private static HikariDataSource connected(
            HikariConfig config, Function<RuntimeException, RuntimeException> unopened) {
        try {
            return new HikariDataSource(config);
        } catch (RuntimeException problem) {
            throw unopened.apply(problem);
        }
    }

    private static Database embedded(HikariConfig config, Optional<DataFolder> folder) {
        return new Database(config, SQLDialect.H2, folder, problem -> unopened(problem, folder));
    }

    private static RuntimeException unopened(RuntimeException problem, Optional<DataFolder> folder) {
        if (folder.isPresent()) {
            return ofFile(problem, folder.get());
        }
        return new DatabaseUnavailable("the database does not answer or its file cannot be read", problem);
    }

    private static RuntimeException ofFile(RuntimeException problem, DataFolder folder) {
        if (StorageTrouble.isInUse(problem)) {
            return new DatabaseUnavailable("another program holds " + folder.file() + "; stop that one first", problem);
        }
        if (StorageTrouble.isOutOfMemory(problem)) {
            return new DatabaseUnavailable(
                    "Java ran out of memory; start it with more, as in java -Xmx2g -jar rosinbook.jar", problem);
        }
        try {
            folder.checkCanWrite();
        } catch (CannotWrite cause) {
            cause.addSuppressed(problem);
            return cause;
        }
        return folder.damaged("is damaged and cannot be read", problem);
    }

    /**
     * The embedded database in this folder, made if it is not there.
     *
     * @throws DatabaseUnavailable if it cannot be opened
     * @throws DatabaseDamaged if its file is not as it was left
     * @throws CannotWrite if it has to be made or brought up to date and there is no room
     */
    public static Database inFolder(Path path) {
        DataFolder folder = DataFolder.claim(path);
        try {
            if (!folder.holdsNotebook()) {
                make(folder, fresh -> fresh.migrations().toNewest());
            }
            folder.breakSeal();
            Database database = openFile(folder);
            if (!database.needsNewTables(folder)) {
                return database;
            }
            database.closeSealed(folder);
            folder.copyToUnfinished();
            fill(folder, copy -> copy.migrations().toNewest());
            return openFile(folder);
        } catch (RuntimeException problem) {
            folder.dropUnfinished();
            folder.close();
            throw problem;
        }
    }

    /**
     * As {@link #inFolder}, but none is made.
     *
     * @throws IllegalArgumentException if the folder holds no notebook; then nothing was changed
     */
    public static Database existingInFolder(Path path) {
        if (!DataFolder.holdsNotebook(path)) {
            throw new IllegalArgumentException("there is no notebook in " + path + "; name it with --data");
        }
        return inFolder(path);
    }

    /** Makes a database under another name, and gives it the notebook's name when it is whole. */
    private static void make(DataFolder folder, Consumer<Database> filling) {
        folder.checkCanWrite();
        fill(folder, filling);
    }

    private static void fill(DataFolder folder, Consumer<Database> filling) {
        String url = DataFolder.url(folder.unfinishedFile()) + ";MAX_COMPACT_TIME=0"; // there is nothing old in it
        Database unfinished = embedded(h2(url), Optional.of(folder));
        try {
            filling.accept(unfinished);
            unfinished.checkpoint();
        } finally {
            unfinished.closeFile();
        }
        folder.finish();
    }

    /** Whatever was not written yet is written now, or told; closing would only log that it could not be. */
    private void checkpoint() {
        try {
            sql.execute("CHECKPOINT SYNC");
        } catch (DataAccessException problem) {
            throw told(problem);
        }
    }

    private static Database openFile(DataFolder folder) {
        return embedded(h2(DataFolder.url(folder.file())), Optional.of(folder));
    }

    private boolean needsNewTables(DataFolder folder) {
        try {
            return migrations().arePending();
        } catch (DatabaseUnavailable problem) {
            closeSealed(folder);
            throw problem;
        } catch (RuntimeException problem) {
            pool.close();
            throw ofFile(problem, folder);
        }
    }

    /** An embedded database in memory, gone when closed. */
    public static Database inMemory(String name) {
        Database database = embedded(h2("jdbc:h2:mem:" + name), Optional.empty());
        database.migrations().toNewest();
        return database;
    }

    /**
     * Its own log (4) goes the way of every other; a file of it in the folder would quote values. What a table holds is
     * looked at after a hundred changes, not after two thousand as by default: until then H2 takes it that every second
     * row has a notebook of its own, and chooses indexes accordingly.
     */
    private static HikariConfig h2(String url) {
        HikariConfig config = new HikariConfig();
        config.setJdbcUrl(url + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;TRACE_LEVEL_FILE=4;ANALYZE_AUTO=100");
        config.setUsername("rosinbook");
        config.setPassword("");
        config.setMaximumPoolSize(8);
        config.setMinimumIdle(1);
        config.setConnectionTimeout(MOST_WAIT_MILLIS);
        config.setConnectionInitSql("SET SESSION CHARACTERISTICS AS TRANSACTION ISOLATION LEVEL SNAPSHOT");
        return config;
    }

    /**
     * A PostgreSQL database.
     *
     * @param jdbcUrl beginning {@code jdbc:postgresql:}
     * @throws DatabaseUnavailable if it does not answer
     * @throws IllegalArgumentException if the address is of another database
     */
    public static Database postgresql(String jdbcUrl, String user, String password) {
        return prepared(connected(jdbcUrl, user, password), Migrations::toNewest);
    }

    /**
     * As {@link #postgresql}, but its tables are left as they are.
     *
     * @throws IllegalArgumentException if the database holds no notebook
     * @throws DatabaseUnavailable if it does not answer, or its tables are not of this version
     */
    public static Database existingPostgresql(String jdbcUrl, String user, String password) {
        return prepared(connected(jdbcUrl, user, password), migrations -> {
            if (migrations.version().isEmpty()) {
                throw new IllegalArgumentException(
                        "there is no notebook in this PostgreSQL database; name another with --database");
            }
            if (migrations.arePending()) {
                throw new DatabaseUnavailable(
                        "its tables are of an earlier Rosinbook; start serve of this version first", null);
            }
        });
    }

    private static Database prepared(Database database, Consumer<Migrations> preparing) {
        try {
            preparing.accept(database.migrations());
            return database;
        } catch (RuntimeException problem) {
            database.close();
            throw problem instanceof FlywayException untold ? Migrations.told(untold) : problem;
        }
    }

    private static Database connected(String jdbcUrl, String user, String password) {
        return new Database(
                PostgresPool.config(jdbcUrl, user, password),
                SQLDialect.POSTGRES,
                Optional.empty(),
                problem -> new DatabaseUnavailable(PostgresPool.reason(jdbcUrl, problem), problem));
    }

    /**
     * A folder that is empty or not there, and the notebook that {@code filling} puts into it; none if that fails.
     *
     * @throws IllegalArgumentException if something is in the folder
     */
    static Database inEmptyFolder(Path path, Consumer<Database> filling) {
        DataFolder.checkIsEmpty(path);
        DataFolder folder = DataFolder.claim(path);
        try {
            make(folder, filling);
            return openFile(folder);
        } catch (RuntimeException problem) {
            folder.dropUnfinished();
            folder.close();
            throw problem;
        }
    }

    /**
     * A PostgreSQL database without rows, and what {@code filling} puts into it.
     *
     * @throws IllegalArgumentException if there are rows
     */
    static Database inEmptyPostgresql(String url, String user, String password, Consumer<Database> filling) {
        Database database = connected(url, user, password);
        try {
            database.look(Restore::checkIsEmpty);
            filling.accept(database);
            return database;
        } catch (RuntimeException problem) {
            database.close();
            throw problem;
        }
    }

    Migrations migrations() {
        return new Migrations(migrating);
    }

    /** Version of the tables, such as {@code 004}. */
    String schemaVersion() {
        try {
            return migrations().version().orElseThrow();
        } catch (FlywayException problem) {
            throw Migrations.told(problem);
        }
    }

    /**
     * Runs changes in one transaction; when this returns they are on the disk.
     *
     * @param work may be called again after what it did was undone, because somebody else's change crossed it
     * @throws CannotWrite if there is no room or only reading is allowed; then nothing was changed
     * @throws DatabaseUnavailable if the database is away; whether the changes were kept is unknown then
     * @throws DatabaseBusy if others were in the way too long; nothing was changed
     */
    <T> T change(Function<DSLContext, T> work) {
        if (!isH2) {
            return inWords(() -> repeated(sql, work));
        }
        awaitTurn();
        try {
            folder.ifPresent(DataFolder::checkCanWrite);
            awaken();
            return onTheDisk(work);
        } catch (DataAccessException problem) {
            if (folder.isPresent() && StorageTrouble.isOfFile(problem)) {
                reopen();
            }
            throw told(problem);
        } finally {
            embeddedWriting.unlock();
        }
    }

    /** Whether whoever wants to write has to wait for its turn. */
    boolean isWriting() {
        return embeddedWriting.isLocked();
    }

    private void awaitTurn() {
        try {
            if (!embeddedWriting.tryLock(MOST_WAIT_MILLIS, TimeUnit.MILLISECONDS)) {
                throw new DatabaseBusy(null);
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new DatabaseBusy(interrupted);
        }
    }

    /** On one connection: another could be to a database that has closed itself and opened again in between. */
    private <T> T onTheDisk(Function<DSLContext, T> work) {
        return sql.connectionResult(connection -> {
            DSLContext one = DSL.using(connection, sql.dialect(), sql.settings());
            T result = repeated(one, work);
            one.execute("CHECKPOINT SYNC");
            return result;
        });
    }

    private static <T> T repeated(DSLContext sql, Function<DSLContext, T> work) {
        for (int tries = 1; ; tries++) {
            try {
                return sql.transactionResult(transaction -> work.apply(transaction.dsl()));
            } catch (DataAccessException problem) {
                if (SqlTrouble.of(problem) != SqlTrouble.CROSSED || tries == MOST_TRIES) {
                    throw problem;
                }
                letOthersPass(tries);
            }
        }
    }

    private static void letOthersPass(int tries) {
        LockSupport.parkNanos(ThreadLocalRandom.current().nextLong(TimeUnit.MILLISECONDS.toNanos(5L << tries)));
    }

    /**
     * Reads in one transaction, from one consistent state.
     *
     * @throws DatabaseUnavailable if the database is away
     */
    <T> T look(Function<DSLContext, T> work) {
        return readAgainIfReopened(() -> reading.transactionResult(transaction -> work.apply(transaction.dsl())));
    }

    /** An embedded database that has closed itself opens for whoever comes next; so this comes twice, if memory sufficed. */
    private <T> T readAgainIfReopened(Supplier<T> work) {
        return inWords(() -> {
            try {
                return work.get();
            } catch (DataAccessException problem) {
                if (folder.isEmpty() || !StorageTrouble.isOfFile(problem)) {
                    throw problem;
                }
                dropConnections();
                if (StorageTrouble.isOutOfMemory(problem)) {
                    throw problem;
                }
                return work.get();
            }
        });
    }

    /**
     * Reads with one statement, which sees one state by itself; a transaction around it would only cost time.
     *
     * @throws DatabaseUnavailable if the database is away
     */
    <T> T ask(Function<DSLContext, T> statement) {
        return readAgainIfReopened(() -> statement.apply(reading));
    }

    Memory memory() {
        return memory;
    }

    Openings openings() {
        return openings;
    }

    private <T> T inWords(Supplier<T> work) {
        try {
            return work.get();
        } catch (DataAccessException problem) {
            throw folder.isPresent() && StorageTrouble.isOfFile(problem)
                    ? unread(problem, folder.get())
                    : told(problem);
        }
    }

    private static RuntimeException unread(DataAccessException problem, DataFolder folder) {
        RuntimeException cause = ofFile(problem, folder);
        return StorageTrouble.isClosed(problem) || cause instanceof CannotWrite
                ? new DatabaseUnavailable("its file cannot be read at the moment", problem)
                : cause;
    }

    private RuntimeException told(DataAccessException problem) {
        if (folder.isPresent() && StorageTrouble.isOfFile(problem)) {
            return ofFile(problem, folder.get());
        }
        Optional<CannotWrite> cannotWrite = StorageTrouble.ofServer(problem);
        if (cannotWrite.isPresent()) {
            return cannotWrite.get();
        }
        return switch (SqlTrouble.of(problem)) {
            case CROSSED, BUSY -> new DatabaseBusy(problem);
            case AWAY -> {
                forget();
                yield new DatabaseUnavailable("the database does not answer", problem);
            }
            case OTHER -> problem;
        };
    }

    /** Where an embedded database has closed itself, the connections to it are dropped; the next one opens it again. */
    private void awaken() {
        if (folder.isPresent() && !isAlive()) {
            dropConnections();
        }
    }

    private void dropConnections() {
        pool.getHikariPoolMXBean().softEvictConnections();
        forget();
    }

    /** What was read before may have been undone: a revision that never reached the disk, or a server that was set back. */
    private void forget() {
        memory = new Memory();
    }

    /** After a write that failed, only what is on the disk counts. */
    private void reopen() {
        try {
            sql.execute("SHUTDOWN IMMEDIATELY");
        } catch (DataAccessException closedAlready) {
            // that is what was wanted
        }
        dropConnections();
    }

    /** Whether the database answers. */
    public boolean isAlive() {
        try {
            return reading.fetchExists(DSL.selectOne());
        } catch (DataAccessException problem) {
            return false;
        }
    }

    /**
     * Its connections now.
     *
     * @param waiting for one
     * @param most there may be
     */
    public record Pool(int active, int idle, int waiting, int most) {}

    public Pool pool() {
        Pool writing = pool(pool);
        if (readingPool == pool) {
            return writing;
        }
        Pool looking = pool(readingPool);
        return new Pool(
                writing.active + looking.active,
                writing.idle + looking.idle,
                writing.waiting + looking.waiting,
                writing.most + looking.most);
    }

    private static Pool pool(HikariDataSource source) {
        HikariPoolMXBean now = source.getHikariPoolMXBean();
        return new Pool(
                now.getActiveConnections(),
                now.getIdleConnections(),
                now.getThreadsAwaitingConnection(),
                source.getMaximumPoolSize());
    }

    @Override
    public void close() {
        openings.close();
        if (folder.isEmpty()) {
            readingPool.close();
            pool.close();
            return;
        }
        closeSealed(folder.get());
        folder.get().close();
    }

    private void closeSealed(DataFolder folder) {
        if (closeFile()) {
            folder.putSeal();
        }
    }

    /** Whether everything could be written. */
    private boolean closeFile() {
        boolean isWhole = false;
        // Not one of the pool's: the pool would ask it for more when it comes back, and be told that all is closed.
        try (Connection connection =
                        DriverManager.getConnection(pool.getJdbcUrl(), pool.getUsername(), pool.getPassword());
                Statement statement = connection.createStatement()) {
            statement.execute("SHUTDOWN");
            isWhole = true;
        } catch (SQLException closed) {
            // so is this connection, by then
        } finally {
            pool.close();
        }
        return isWhole;
    }
}
