package rosinbook.access;

/** The keeper's account would have been closed; nothing was changed. */
public final class KeeperStays extends RuntimeException {
    private static final long serialVersionUID = 1;

    public KeeperStays() {
        super("the keeper's account cannot be closed: somebody has to look after the place");
    }
}
