package rosinbook.notebook;

/** A save that builds on a revision that the sheet does not have; nothing was changed. */
public final class NoSuchBase extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient Revision current;

    NoSuchBase(Revision current, int basedOn) {
        super("this " + current.kind().singular() + " has no revision " + basedOn + " to build on, the newest is "
                + current.number() + "; read it again, and save over what you get");
        this.current = current;
    }

    /** What is newest now. */
    public Revision current() {
        return current;
    }
}
