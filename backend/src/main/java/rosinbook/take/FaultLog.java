package rosinbook.take;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;

/** Faults as they are found, each once, and whether the player lets them be mended. Not safe for use by several threads. */
final class FaultLog {
    private final Take take;
    private final Set<String> refused;
    private final Map<String, Fault> faults = new LinkedHashMap<>();
    private int repairs;

    FaultLog(Take take, Collection<String> refused) {
        this.take = take;
        this.refused = new HashSet<>(refused);
    }

    /**
     * Notes a fault.
     *
     * @param faulty the note that is wrong
     * @param involved other notes that bear on it
     * @param because the reason; asked for only when the fault is new
     * @return whether to mend it
     */
    boolean found(FaultKind kind, Stroke faulty, List<Stroke> involved, Supplier<String> because, String repair) {
        String id = id(kind, faulty.id);
        boolean mend = !refused.contains(id);
        if (mend) {
            repairs++;
        }
        if (!faults.containsKey(id)) {
            TakeNote note = take.notes().get(faulty.id);
            Set<Integer> notes = new LinkedHashSet<>(faulty.from);
            involved.forEach(stroke -> notes.add(stroke.id));
            faults.put(
                    id,
                    new Fault(
                            id,
                            kind,
                            note.string(),
                            note.onSeconds(),
                            note.note(),
                            new ArrayList<>(notes),
                            because.get(),
                            repair,
                            !mend));
        }
        return mend;
    }

    /** Notes that something was mended along with a fault already told. */
    void mended() {
        repairs++;
    }

    /** How often a repair was let through so far. */
    int repairs() {
        return repairs;
    }

    List<Fault> faults() {
        List<Fault> sorted = new ArrayList<>(faults.values());
        sorted.sort(Comparator.comparingDouble(Fault::atSeconds)
                .thenComparing(fault -> fault.notes().get(0)));
        return sorted;
    }

    private static String id(FaultKind kind, int note) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-') + '-' + note;
    }
}
