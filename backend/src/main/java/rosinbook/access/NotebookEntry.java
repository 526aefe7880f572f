package rosinbook.access;

import java.util.List;
import java.util.UUID;

/**
 * A notebook, as it stands in somebody's list.
 *
 * @param may what they may do in it
 * @param owners names of those who own it, in order; empty on a computer where nobody has an account yet
 */
public record NotebookEntry(UUID id, String title, Right may, List<String> owners) {
    /** Most characters of a title. */
    public static final int LONGEST_TITLE = 200;

    public NotebookEntry {
        owners = List.copyOf(owners);
    }
}
