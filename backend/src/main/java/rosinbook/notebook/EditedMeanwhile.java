package rosinbook.notebook;

import rosinbook.compare.ThreeWayMerge;

/** A save that touches what somebody else saved in between; nothing was changed. */
public final class EditedMeanwhile extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient Revision current;
    private final transient ThreeWayMerge merge;

    EditedMeanwhile(Revision current, ThreeWayMerge merge) {
        super("somebody saved revision " + current.number()
                + " meanwhile and changed the same things; choose for each which value to keep, then save again");
        this.current = current;
        this.merge = merge;
    }

    /** What is newest now. */
    public Revision current() {
        return current;
    }

    /** Both edits where they do not touch, and the places where they do. */
    public ThreeWayMerge merge() {
        return merge;
    }
}
