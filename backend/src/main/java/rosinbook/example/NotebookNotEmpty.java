package rosinbook.example;

/** The example was asked for where somebody already writes; nothing was changed. */
public final class NotebookNotEmpty extends RuntimeException {
    private static final long serialVersionUID = 1;

    NotebookNotEmpty(int sheets) {
        super("this notebook already holds " + sheets + (sheets == 1 ? " sheet" : " sheets")
                + "; the example goes only into an empty one");
    }
}
