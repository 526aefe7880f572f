package rosinbook.store;

/** The place where a notebook is kept takes no more writing. What was answered before is safe, and reading goes on. */
public final class CannotWrite extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** Why. */
    public enum Reason {
        /** Too little room is left. */
        DISK_FULL,
        /** The folder, its disk or the database allows reading only. */
        READ_ONLY
    }

    private final Reason reason;

    CannotWrite(Reason reason, String message) {
        super(message);
        this.reason = reason;
    }

    public Reason reason() {
        return reason;
    }
}
