package rosinbook.store;

/** A file that cannot be restored from; the message says why. Nothing was written. */
public final class BackupUnreadable extends RuntimeException {
    private static final long serialVersionUID = 1;

    BackupUnreadable(String message) {
        super(message);
    }
}
