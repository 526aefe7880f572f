package rosinbook.store;

/** An archive that is damaged, is no archive of ours, or contradicts the notebook. Nothing was imported. */
public final class ArchiveUnreadable extends RuntimeException {
    private static final long serialVersionUID = 1;

    ArchiveUnreadable(String message) {
        super(message);
    }
}
