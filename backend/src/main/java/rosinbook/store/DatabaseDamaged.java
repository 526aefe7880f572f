package rosinbook.store;

/** The file of an embedded notebook is not as it was left. The message names the file and says what is wrong with it. */
public final class DatabaseDamaged extends RuntimeException {
    private static final long serialVersionUID = 1;

    DatabaseDamaged(String message, Throwable cause) {
        super(message, cause);
    }
}
