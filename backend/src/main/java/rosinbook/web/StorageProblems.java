package rosinbook.web;

import io.javalin.config.RoutesConfig;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rosinbook.store.BackupUnreadable;
import rosinbook.store.CannotWrite;
import rosinbook.store.DatabaseDamaged;

/** What is answered when the place where the notebook is kept fails. */
final class StorageProblems {
    private static final Logger LOG = LoggerFactory.getLogger(StorageProblems.class);

    private StorageProblems() {}

    static void register(RoutesConfig routes) {
        routes.exception(CannotWrite.class, (problem, exchange) -> {
            exchange.header("Retry-After", "5");
            Problems.answer(exchange, cannotWrite(problem));
        });
        routes.exception(BackupUnreadable.class, (problem, exchange) -> {
            LOG.warn("a backup did not arrive as it was written", problem);
            exchange.header("Retry-After", "5");
            Problems.answer(
                    exchange,
                    new Problem(
                            503,
                            "backup-failed",
                            "The backup could not be read again",
                            "Nothing is left of it. Try again; if it fails again, look after the disk of the backups."));
        });
        routes.exception(DatabaseDamaged.class, (problem, exchange) -> {
            LOG.error("{}; stop the service and run \"rosinbook verify\"", problem.getMessage(), problem);
            Problems.answer(
                    exchange,
                    new Problem(
                            500,
                            "damaged",
                            "The notebook's file is damaged",
                            "Stop Rosinbook and start it again: it says how to restore the newest backup."));
        });
    }

    private static Problem cannotWrite(CannotWrite problem) {
        return switch (problem.reason()) {
            case DISK_FULL -> new Problem(507, "disk-full", "There is no room to keep this", problem.getMessage());
            case READ_ONLY ->
                new Problem(503, "read-only", "This notebook can only be read at the moment", problem.getMessage());
        };
    }
}
