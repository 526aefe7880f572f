package rosinbook.store;

/** The database cannot be used. */
public final class DatabaseUnavailable extends RuntimeException {
    private static final long serialVersionUID = 1;

    DatabaseUnavailable(String message, Throwable cause) {
        super(message, cause);
    }
}
