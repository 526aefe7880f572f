package rosinbook.store;

import static rosinbook.store.schema.Tables.INVITATION;
import static rosinbook.store.schema.Tables.SIGN_IN_SESSION;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.flywaydb.core.api.MigrationVersion;
import org.jooq.DSLContext;
import org.jooq.Table;
import org.jooq.exception.DataAccessException;

/** Brings a backup into an empty place. */
public final class Restore {
    private final BackupFile backup;

    private Restore(BackupFile backup) {
        this.backup = backup;
    }

    /**
     * What was restored.
     *
     * @param damages what was wrong in the backed-up notebook already, one sentence each
     */
    public record Restored(BackupCover cover, List<String> damages) {
        public Restored {
            damages = List.copyOf(damages);
        }
    }

    /**
     * Into a folder that is empty or not there.
     *
     * @throws BackupUnreadable if the file is damaged or no backup; then nothing is left in the folder
     * @throws IllegalArgumentException if the folder is not empty
     */
    public static Restored intoFolder(Path file, Path folder) throws IOException {
        return from(file, restore -> Database.inEmptyFolder(folder, restore::fill));
    }

    /**
     * Into a PostgreSQL database without any rows.
     *
     * @throws BackupUnreadable if the file is damaged or no backup; then no rows were added
     * @throws IllegalArgumentException if the database is not empty
     */
    public static Restored intoPostgresql(Path file, String url, String user, String password) throws IOException {
        return from(file, restore -> Database.inEmptyPostgresql(url, user, password, restore::fill));
    }

    private static Restored from(Path file, Function<Restore, Database> place) throws IOException {
        try (BackupFile backup = BackupFile.open(file)) {
            backup.check();
            try (Database restored = place.apply(new Restore(backup))) {
                return new Restored(backup.cover(), BackupWriter.damages(restored));
            }
        } catch (UncheckedIOException problem) {
            throw problem.getCause();
        }
    }

    /** Tables as they were, their rows, and then the tables as they are today. A session that has ended since must not revive, nor a link that was used. */
    private void fill(Database target) {
        String schema = backup.cover().schema();
        Migrations migrations = target.migrations();
        if (!migrations.knows(schema)) {
            throw new BackupUnreadable(
                    "a newer Rosinbook made this backup (tables " + schema + "); update this one and restore again");
        }
        Optional<String> here = migrations.version();
        if (here.isPresent()
                && MigrationVersion.fromVersion(here.get()).isNewerThan(MigrationVersion.fromVersion(schema))) {
            throw new IllegalArgumentException(
                    "this database has newer tables than the backup; make a fresh, empty database and name that one");
        }
        migrations.to(schema);
        try {
            target.change(sql -> load(sql));
        } catch (DataAccessException problem) {
            BackupUnreadable unreadable = new BackupUnreadable("this backup contradicts itself and cannot be restored");
            unreadable.initCause(problem);
            throw unreadable;
        }
        migrations.toNewest();
        target.change(sql -> sql.deleteFrom(SIGN_IN_SESSION).execute()
                + sql.deleteFrom(INVITATION).execute());
    }

    /** @throws IllegalArgumentException if there are rows */
    static Void checkIsEmpty(DSLContext sql) {
        if (StoredTables.inOrder(sql).stream().anyMatch(table -> sql.fetchExists(table))) {
            throw new IllegalArgumentException(
                    "this database holds a notebook already; a backup is restored only into an empty one");
        }
        return null;
    }

    /** If somebody begins a notebook meanwhile, its row crosses ours; done again, this finds it. */
    private Void load(DSLContext sql) {
        checkIsEmpty(sql);
        List<Table<?>> tables = StoredTables.inOrder(sql);
        Map<String, BackupCover.Part> parts =
                backup.cover().parts().stream().collect(Collectors.toMap(BackupCover.Part::table, part -> part));
        if (!parts.keySet().equals(tables.stream().map(StoredTables::name).collect(Collectors.toSet()))) {
            throw new BackupUnreadable("this backup does not fit its own version: it holds other tables");
        }
        tables.forEach(table -> load(sql, table, parts.get(StoredTables.name(table))));
        return null;
    }

    private void load(DSLContext sql, Table<?> table, BackupCover.Part part) {
        try (InputStream lines = backup.part(part)) {
            if (new TableRows(sql, table).read(lines) != part.rows()) {
                throw new BackupUnreadable("this backup is damaged: rows of " + part.table() + " are missing");
            }
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }
}
