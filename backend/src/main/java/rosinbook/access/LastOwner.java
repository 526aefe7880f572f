package rosinbook.access;

/** A notebook would have been left without an owner; nothing was changed. */
public final class LastOwner extends RuntimeException {
    private static final long serialVersionUID = 1;

    public LastOwner() {
        super("a notebook keeps at least one owner; make somebody else an owner first");
    }
}
