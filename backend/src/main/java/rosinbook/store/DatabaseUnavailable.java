package rosinbook.store;

/** The database cannot be used: not opened, or away while it was in use. */
public class DatabaseUnavailable extends RuntimeException {
    private static final long serialVersionUID = 1;

    DatabaseUnavailable(String message, Throwable cause) {
        super(message, cause);
    }
}
