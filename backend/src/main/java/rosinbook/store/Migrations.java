package rosinbook.store;

import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.CoreErrorCode;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationVersion;
import org.flywaydb.core.api.configuration.FluentConfiguration;

/** The tables of a database, from none to the newest. */
final class Migrations {
    /** Where Flyway writes down what it did; no table of ours. */
    static final String HISTORY_TABLE = "flyway_schema_history";

    private static final String NOT_ALLOWED = "42501";

    private final DataSource source;

    Migrations(DataSource source) {
        this.source = source;
    }

    private FluentConfiguration flyway() {
        return Flyway.configure()
                .dataSource(source)
                .locations("classpath:migrations")
                .javaMigrations(new TitleOrderMigration());
    }

    /** @throws DatabaseUnavailable if a newer Rosinbook wrote here */
    boolean arePending() {
        checkNotNewer(version());
        return flyway().load().info().pending().length > 0;
    }

    /** Version of the tables as they are, such as {@code 004}; empty if there are none. */
    Optional<String> version() {
        return Optional.ofNullable(flyway().load().info().current())
                .map(MigrationInfo::getVersion)
                .map(MigrationVersion::getVersion);
    }

    private void checkNotNewer(Optional<String> version) {
        if (version.isPresent() && !knows(version.get())) {
            throw new DatabaseUnavailable(
                    "a newer Rosinbook wrote it (tables " + version.get() + "); update this one", null);
        }
    }

    boolean knows(String version) {
        MigrationVersion asked = MigrationVersion.fromVersion(version);
        return Arrays.stream(flyway().load().info().all())
                .filter(each -> !each.getState().isFailed() && each.getState().isResolved())
                .map(MigrationInfo::getVersion)
                .filter(Objects::nonNull)
                .anyMatch(asked::equals);
    }

    /** @throws DatabaseUnavailable if a newer Rosinbook wrote here */
    void toNewest() {
        checkNotNewer(version());
        migrate(flyway());
    }

    void to(String version) {
        migrate(flyway().target(version));
    }

    private static void migrate(FluentConfiguration flyway) {
        try {
            flyway.load().migrate();
        } catch (FlywayException problem) {
            throw told(problem);
        }
    }

    /** What Flyway could not do with a database, and what to do about it. */
    static DatabaseUnavailable told(FlywayException problem) {
        if (problem.getErrorCode() == CoreErrorCode.NON_EMPTY_SCHEMA_WITHOUT_SCHEMA_HISTORY_TABLE) {
            return new DatabaseUnavailable("it holds other tables; name an empty database", problem);
        }
        if (SqlTrouble.state(problem).equals(NOT_ALLOWED)) {
            return new DatabaseUnavailable(
                    "its user may not make tables in it; make this user the owner of the database", problem);
        }
        return new DatabaseUnavailable("its tables could not be looked at or brought up to date", problem);
    }
}
