package rosinbook.store;

/** Others hold what this needed for so long that it was given up; nothing was changed. */
public final class DatabaseBusy extends RuntimeException {
    private static final long serialVersionUID = 1;

    DatabaseBusy(Throwable cause) {
        super("others are saving so much that this could not be done; try again in a moment", cause);
    }
}
