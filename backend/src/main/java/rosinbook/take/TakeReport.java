package rosinbook.take;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All there is to say about a take, ready to be shown or sent.
 *
 * @param notes how many there were, how many remain, and how many had no fault
 * @param seconds from the first start to the last end
 * @param faults in order of time, refused ones among them
 * @param perString one for each string, string 1 first
 * @param tracking how well the playing was followed, in one figure
 * @param advice what to try, in sentences; never certain
 * @param remarks how the file was read, in sentences
 * @param score the cleaned take against the truth, if there is one
 * @param scoreRaw the take as it came against the truth, if there is one
 * @param before the notes as they came
 * @param after the notes as they were played
 * @param thresholds the figures the findings rest on
 */
public record TakeReport(
        Notes notes,
        double seconds,
        List<Fault> faults,
        List<StringReport> perString,
        Tracking tracking,
        List<String> advice,
        List<String> remarks,
        Optional<Scores> score,
        Optional<Scores> scoreRaw,
        List<TakeNote> before,
        List<CleanNote> after,
        Map<Threshold, Double> thresholds) {
    /**
     * Counts of notes.
     *
     * @param heard notes of the take as it came
     * @param kept notes once faults are mended
     * @param clean notes of the take as it came that bear no fault
     */
    public record Notes(int heard, int kept, int clean) {}

    /**
     * One figure for a whole take.
     *
     * @param percent 0 to 100; 100 for a take without notes
     * @param faultsPerMinute faults of all kinds; 0 for a take without notes
     * @param cleanShare share of the notes heard that bear no fault, 0 to 1; 1 for a take without notes
     * @param definition how {@code percent} is worked out
     */
    public record Tracking(double percent, double faultsPerMinute, double cleanShare, String definition) {
        static final String DEFINITION =
                "100 x notes kept / (notes kept + faults): 100 means every stroke came as one right note.";
    }

    /** Copies the lists. */
    public TakeReport {
        faults = List.copyOf(faults);
        perString = List.copyOf(perString);
        advice = List.copyOf(advice);
        remarks = List.copyOf(remarks);
        before = List.copyOf(before);
        after = List.copyOf(after);
        thresholds = Map.copyOf(thresholds);
    }

    /** Reports on a take without a truth. */
    public static TakeReport of(Cleaning cleaning) {
        return of(cleaning, Optional.empty());
    }

    /** Reports on a take, scored against the truth if there is one. */
    public static TakeReport of(Cleaning cleaning, Optional<Take> truth) {
        Take take = cleaning.take();
        int heard = take.notes().size();
        int kept = cleaning.notes().size();
        int faults = cleaning.faults().size();
        int clean = heard - faultyNotes(cleaning);
        double perMinute = perMinute(faults, take.seconds());
        Tracking tracking = new Tracking(
                kept + faults == 0 ? 100 : 100.0 * kept / (kept + faults),
                perMinute,
                heard == 0 ? 1 : clean / (double) heard,
                Tracking.DEFINITION);
        Take cleaned = cleaning.cleaned();
        return new TakeReport(
                new Notes(heard, kept, clean),
                take.seconds(),
                cleaning.faults(),
                perString(cleaning),
                tracking,
                Advice.of(cleaning),
                take.remarks(),
                truth.map(played -> Scores.of(played, cleaned)),
                truth.map(played -> Scores.of(played, take)),
                take.notes(),
                cleaning.notes(),
                cleaning.thresholds().toMap());
    }

    private static int faultyNotes(Cleaning cleaning) {
        BitSet faulty = new BitSet();
        cleaning.faults().forEach(fault -> faulty.set(fault.notes().get(0)));
        return faulty.cardinality();
    }

    private static List<StringReport> perString(Cleaning cleaning) {
        Take take = cleaning.take();
        int strings = take.tuning().strings();
        int[] notes = new int[strings + 1];
        int[] kept = new int[strings + 1];
        List<Map<FaultKind, Integer>> faults = new ArrayList<>();
        for (int string = 0; string <= strings; string++) {
            faults.add(new EnumMap<>(FaultKind.class));
        }
        take.notes().forEach(note -> notes[note.string()]++);
        cleaning.notes().forEach(note -> kept[note.note().string()]++);
        cleaning.faults().forEach(fault -> faults.get(fault.string()).merge(fault.kind(), 1, Integer::sum));
        List<StringReport> reports = new ArrayList<>();
        for (int string = 1; string <= strings; string++) {
            int count = faults.get(string).values().stream()
                    .mapToInt(Integer::intValue)
                    .sum();
            reports.add(new StringReport(
                    string,
                    take.tuning().open(string),
                    notes[string],
                    kept[string],
                    faults.get(string),
                    perMinute(count, take.seconds())));
        }
        return reports;
    }

    private static double perMinute(int count, double seconds) {
        return seconds > 0 ? count * 60 / seconds : 0;
    }
}
