package rosinbook.store;

import java.sql.SQLException;
import java.util.Optional;
import java.util.Set;
import org.h2.api.ErrorCode;

/** What a database's complaint means for the place it keeps things in. */
final class StorageTrouble {
    private static final Set<Integer> H2_FILE = Set.of(
            ErrorCode.GENERAL_ERROR_1,
            ErrorCode.IO_EXCEPTION_1,
            ErrorCode.IO_EXCEPTION_2,
            ErrorCode.FILE_CORRUPTED_1,
            ErrorCode.FILE_VERSION_ERROR_1,
            ErrorCode.DATA_CONVERSION_ERROR_1,
            ErrorCode.UNKNOWN_DATA_TYPE_1,
            ErrorCode.DESERIALIZATION_FAILED_1,
            ErrorCode.ROW_NOT_FOUND_WHEN_DELETING_1,
            ErrorCode.ROW_NOT_FOUND_IN_PRIMARY_INDEX,
            ErrorCode.DATABASE_IS_CLOSED,
            ErrorCode.DATABASE_CALLED_AT_SHUTDOWN,
            ErrorCode.DATABASE_ALREADY_OPEN_1,
            ErrorCode.DATABASE_IS_READ_ONLY,
            ErrorCode.OUT_OF_MEMORY);

    private StorageTrouble() {}

    /** Whether the embedded database could not read or write its file, or found something in it that cannot be. */
    static boolean isOfFile(Throwable problem) {
        for (Throwable cause = problem; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException complaint && H2_FILE.contains(complaint.getErrorCode())) {
                return true;
            }
        }
        return false;
    }

    /** Whether the embedded database has closed itself, or was closed, meanwhile. */
    static boolean isClosed(Throwable problem) {
        return problem.getCause() instanceof SQLException complaint
                && (complaint.getErrorCode() == ErrorCode.DATABASE_IS_CLOSED
                        || complaint.getErrorCode() == ErrorCode.DATABASE_CALLED_AT_SHUTDOWN);
    }

    /** Whether the embedded database closed itself because Java had no memory left; its file is as it was. */
    static boolean isOutOfMemory(Throwable problem) {
        return is(problem, ErrorCode.OUT_OF_MEMORY);
    }

    /** Whether the embedded database's file is locked, though not by another Rosinbook, which would have claimed its folder. */
    static boolean isInUse(Throwable problem) {
        return is(problem, ErrorCode.DATABASE_ALREADY_OPEN_1);
    }

    private static boolean is(Throwable problem, int code) {
        for (Throwable cause = problem; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException complaint && complaint.getErrorCode() == code) {
                return true;
            }
        }
        return false;
    }

    /** The same for a PostgreSQL server, by its SQLSTATE (PostgreSQL 15 documentation, appendix A). */
    static Optional<CannotWrite> ofServer(Throwable problem) {
        for (Throwable cause = problem; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException complaint) {
                String state = String.valueOf(complaint.getSQLState());
                if (state.equals("53100")) {
                    return Optional.of(new CannotWrite(
                            CannotWrite.Reason.DISK_FULL, "The database's disk is full. Make room; then save again."));
                }
                if (state.equals("25006")) {
                    return Optional.of(new CannotWrite(
                            CannotWrite.Reason.READ_ONLY, "The database can only be read at the moment."));
                }
            }
        }
        return Optional.empty();
    }
}
