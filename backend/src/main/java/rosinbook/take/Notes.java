package rosinbook.take;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The order every list of notes is kept in. */
final class Notes {
    static final Comparator<TakeNote> ORDER = Comparator.comparingLong(TakeNote::onTick)
            .thenComparingInt(TakeNote::string)
            .thenComparingInt(note -> note.note().midi())
            .thenComparingLong(TakeNote::offTick)
            .thenComparingInt(TakeNote::velocity);

    private Notes() {}

    /** Sorted, with ids counted from 0. */
    static List<TakeNote> inOrder(List<TakeNote> notes) {
        List<TakeNote> sorted = new ArrayList<>(notes);
        sorted.sort(ORDER);
        for (int id = 0; id < sorted.size(); id++) {
            if (sorted.get(id).id() != id) {
                sorted.set(id, sorted.get(id).withId(id));
            }
        }
        return sorted;
    }
}
