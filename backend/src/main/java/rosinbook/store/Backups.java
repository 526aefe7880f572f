package rosinbook.store;

import static rosinbook.store.schema.Tables.NOTEBOOK;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Backups of a database that are made and kept while it is open. Those of another in the same folder are neither seen nor
 * deleted. Safe for use by several threads.
 */
public final class Backups {
    private static final Logger LOG = LoggerFactory.getLogger(Backups.class);
    private static final Duration A_DAY = Duration.ofDays(1);

    private final Database database;
    private final BackupFolder folder;
    private final Clock clock;

    public Backups(Database database, BackupFolder folder, Clock clock) {
        this.database = database;
        this.folder = folder;
        this.clock = clock;
    }

    /** Those that are kept, newest first. */
    public List<BackupFolder.Kept> list() {
        Optional<Instant> begun = begun();
        return folder.list().stream().filter(kept -> kept.begun().equals(begun)).toList();
    }

    private Optional<Instant> begun() {
        return database.ask(sql -> sql.select(NOTEBOOK.CREATED_AT)
                .from(NOTEBOOK)
                .where(NOTEBOOK.ID.eq(DatabaseSheetStore.ONLY_NOTEBOOK))
                .fetchOptional(found -> found.value1().toInstant()));
    }

    /**
     * Makes one now, and deletes those that need not be kept any longer. While the notebook has damages, none is deleted;
     * nor one that is dated later, from when the clock was wrong, before its time has come.
     *
     * @throws CannotWrite if there is no room for it, or only reading is allowed
     * @throws BackupUnreadable if it did not arrive as it was written
     */
    public synchronized BackupFolder.Kept make() {
        long usualBytes =
                list().stream().mapToLong(BackupFolder.Kept::bytes).findFirst().orElse(0);
        BackupFolder.Kept made =
                folder.add(clock.instant().truncatedTo(ChronoUnit.MILLIS), new BackupWriter(database), usualBytes);
        if (made.isOfDamaged()) {
            LOG.error(
                    "The notebook has damages; stop the service, then \"rosinbook verify\" lists them. Backup {} was"
                            + " made, and older ones are all kept.",
                    made.name());
        } else {
            folder.tidy(list().stream()
                    .filter(kept -> !kept.at().isAfter(made.at()))
                    .toList());
        }
        return made;
    }

    /** Makes one if the newest is older than a day. A failure is logged, and nothing else. */
    public void makeIfDue() {
        try {
            if (isDue(clock.instant())) {
                make();
            }
        } catch (CannotWrite problem) {
            LOG.warn("No backup could be made; it is tried again soon: {}", problem.getMessage());
        } catch (DatabaseDamaged problem) {
            LOG.error(
                    "No backup could be made. Stop the service and start it again: it says how to restore the notebook",
                    problem);
        } catch (RuntimeException problem) {
            LOG.warn("No backup could be made; it is tried again soon", problem);
        }
    }

    /** One that is dated later than now comes from a clock that was wrong, and says nothing. */
    private synchronized boolean isDue(Instant now) {
        return list().stream()
                .map(BackupFolder.Kept::at)
                .noneMatch(at -> at.isAfter(now.minus(A_DAY)) && !at.isAfter(now));
    }
}
