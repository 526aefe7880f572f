package rosinbook.access;

/** There is a player of that name already; nothing was changed. */
public final class NameTaken extends RuntimeException {
    private static final long serialVersionUID = 1;

    public NameTaken(PlayerName name) {
        super("there is a player called " + name + " already; choose another name");
    }
}
