package rosinbook.store;

import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Set;

/**
 * What went wrong in a database, by its SQLSTATE.
 *
 * @see "PostgreSQL 15, appendix A: Error Codes"
 */
enum SqlTrouble {
    /** Two changes got into each other's way, and one was undone; doing it again works. */
    CROSSED,
    /** Somebody holds what was waited for. */
    BUSY,
    /** The connection broke, or none could be had. */
    AWAY,
    /** Anything else: a mistake of ours. */
    OTHER;

    /** Serialization failure, deadlock, and a row that somebody else has just added. */
    private static final Set<String> CROSSING = Set.of("40001", "40P01", "23505");

    private static final String LOCK_NOT_AVAILABLE = "55P03";

    /** What the innermost SQL exception among the causes tells. */
    static SqlTrouble of(Throwable problem) {
        SqlTrouble trouble = OTHER;
        for (Throwable cause = problem; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLTransientConnectionException) {
                return AWAY;
            }
            if (cause instanceof SQLException sql && sql.getSQLState() != null) {
                trouble = of(sql.getSQLState());
            }
        }
        return trouble;
    }

    /** The SQLSTATE of the innermost SQL exception among the causes that has one; empty if none has. */
    static String state(Throwable problem) {
        String state = "";
        for (Throwable cause = problem; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException sql && sql.getSQLState() != null) {
                state = sql.getSQLState();
            }
        }
        return state;
    }

    private static SqlTrouble of(String state) {
        if (CROSSING.contains(state)) {
            return CROSSED;
        }
        if (state.equals(LOCK_NOT_AVAILABLE)) {
            return BUSY;
        }
        return isConnectionGone(state) ? AWAY : OTHER;
    }

    /** Class 08 connection exception, 53 insufficient resources, 57P operator intervention. */
    private static boolean isConnectionGone(String state) {
        return state.startsWith("08") || state.startsWith("53") || state.startsWith("57P");
    }
}
