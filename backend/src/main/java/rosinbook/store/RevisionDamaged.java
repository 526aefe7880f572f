package rosinbook.store;

/** A revision's content, as it stands in the database, cannot be read. The message says which revision it is. */
public final class RevisionDamaged extends RuntimeException {
    private static final long serialVersionUID = 1;

    RevisionDamaged(String place, Throwable cause) {
        super(place + " cannot be read; stop the service, then \"rosinbook verify\" lists every damage", cause);
    }
}
