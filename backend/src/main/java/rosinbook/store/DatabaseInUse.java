package rosinbook.store;

/** Another process has the notebook's folder open. */
public final class DatabaseInUse extends DatabaseUnavailable {
    private static final long serialVersionUID = 1;

    DatabaseInUse(Throwable cause) {
        super("another Rosinbook has it open; stop that one first", cause);
    }
}
