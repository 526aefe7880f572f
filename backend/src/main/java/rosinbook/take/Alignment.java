package rosinbook.take;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Where a script lies along a take: the shift that most pairs of a scripted and a played note agree on, when both have the same
 * string and pitch (a vote over time differences, as in Hough's transform, 1962). The tempo is taken as it is.
 */
final class Alignment {
    private static final double BIN_SECONDS = 0.025;
    private static final double NEAR_SECONDS = 0.05;
    /** Enough to tell; it bounds the work for a long take. */
    private static final int MOST_NOTES = 4000;

    private Alignment() {}

    /**
     * Seconds to add to the script's times.
     *
     * @return such that the script's first note does not start before 0 s; if no note is in common, so that both start together;
     *     0 if either is empty
     */
    static double shiftSeconds(Take script, Take take) {
        if (script.notes().isEmpty() || take.notes().isEmpty()) {
            return 0;
        }
        double first = script.notes().get(0).onSeconds();
        List<Double> shifts = shifts(script, take, -first);
        Map<Long, Integer> votes = new HashMap<>();
        shifts.forEach(shift -> votes.merge(bin(shift), 1, Integer::sum));
        long best = 0;
        int most = 0;
        for (double shift : shifts) {
            long bin = bin(shift);
            int near = votes.getOrDefault(bin - 1, 0) + votes.get(bin) + votes.getOrDefault(bin + 1, 0);
            if (near > most || near == most && bin < best) {
                most = near;
                best = bin;
            }
        }
        if (most == 0) {
            return take.notes().get(0).onSeconds() - first;
        }
        double centre = best * BIN_SECONDS;
        double[] close = shifts.stream()
                .mapToDouble(Double::doubleValue)
                .filter(shift -> Math.abs(shift - centre) <= NEAR_SECONDS)
                .sorted()
                .toArray();
        return close[close.length / 2];
    }

    private static long bin(double shift) {
        return Math.round(shift / BIN_SECONDS);
    }

    private static List<Double> shifts(Take script, Take take, double least) {
        Map<Integer, List<Double>> starts = new HashMap<>();
        script.notes().forEach(note -> starts.computeIfAbsent(place(note), none -> new ArrayList<>())
                .add(note.onSeconds()));
        List<Double> shifts = new ArrayList<>();
        take.notes().stream().limit(MOST_NOTES).forEach(note -> {
            for (double start : starts.getOrDefault(place(note), List.of())) {
                if (note.onSeconds() - start >= least) {
                    shifts.add(note.onSeconds() - start);
                }
            }
        });
        return shifts;
    }

    private static int place(TakeNote note) {
        return note.string() << 8 | (int) Math.round(note.pitch());
    }
}
