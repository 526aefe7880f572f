package rosinbook.store;

/** An archive that is damaged, is no archive of ours, or contradicts the notebook. Nothing was imported. */
public final class ArchiveUnreadable extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** What kind of trouble it is. */
    public enum Trouble {
        /** Damaged, none of ours, or at odds with this notebook. */
        UNREADABLE("unreadable-archive"),
        /** A name no archive of ours has: one that climbs out of its folder, say. */
        STRANGE_NAME("archive-strange-name"),
        /** Two files of the same name. */
        NAME_TWICE("archive-name-twice"),
        /** Files that share their bytes, so that a little unpacks to a lot. */
        OVERLAPPING("archive-overlapping"),
        /** A link, a folder, or a file that is locked or packed in an unusual way. */
        STRANGE_ENTRY("archive-strange-entry");

        private final String type;

        Trouble(String type) {
            this.type = type;
        }

        /** The last part of the problem's type. */
        public String type() {
            return type;
        }
    }

    private final Trouble trouble;

    ArchiveUnreadable(String message) {
        this(Trouble.UNREADABLE, message);
    }

    ArchiveUnreadable(Trouble trouble, String message) {
        super(message);
        this.trouble = trouble;
    }

    public Trouble trouble() {
        return trouble;
    }
}
