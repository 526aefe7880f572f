package rosinbook.notebook;

/** A sheet or revision that is not there. */
public class NoSuchSheet extends RuntimeException {
    private static final long serialVersionUID = 1;

    public NoSuchSheet(String message) {
        super(message);
    }
}
