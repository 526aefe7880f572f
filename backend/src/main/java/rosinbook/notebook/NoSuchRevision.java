package rosinbook.notebook;

/** A sheet that is there, but not at that revision. */
public final class NoSuchRevision extends NoSuchSheet {
    private static final long serialVersionUID = 1;

    NoSuchRevision(String message) {
        super(message);
    }
}
