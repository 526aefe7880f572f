package rosinbook.take;

import static rosinbook.take.Threshold.LATE_FIT;
import static rosinbook.take.Threshold.LATE_LEAST_SECONDS;
import static rosinbook.take.Threshold.LATE_MOST_SECONDS;
import static rosinbook.take.Threshold.TOUCHING;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import rosinbook.take.smf.TempoMap;

/**
 * Finds notes that answered late: a hole before them that is unusual in this take, and an earlier start that would fit its
 * rhythm much better on both sides.
 */
final class LateFinder {
    private static final int LEAST_HOLES = 8;

    private final Thresholds thresholds;
    private final Rhythm rhythm;
    private final TempoMap tempoMap;
    private final FaultLog log;

    LateFinder(Thresholds thresholds, Rhythm rhythm, TempoMap tempoMap, FaultLog log) {
        this.thresholds = thresholds;
        this.rhythm = rhythm;
        this.tempoMap = tempoMap;
        this.log = log;
    }

    void move(List<StringLine> lines) {
        List<Stroke> all = new ArrayList<>();
        lines.forEach(line -> all.addAll(line.toList()));
        all.sort(Comparator.comparingDouble(stroke -> stroke.on));
        double[] holes = holes(all);
        if (holes.length < LEAST_HOLES) {
            return;
        }
        double usual = holes[holes.length / 2];
        double wide = holes[holes.length * 3 / 4];
        double end = Double.NEGATIVE_INFINITY;
        Stroke before = null;
        for (int index = 0; index < all.size(); index++) {
            Stroke stroke = all.get(index);
            double hole = Stroke.between(end, stroke.on);
            double earlier = end + usual;
            if (before != null
                    && hole > usual + get(LATE_LEAST_SECONDS)
                    && hole <= get(LATE_MOST_SECONDS)
                    && hole > 2 * wide) {
                double next = next(all, index);
                if (fit(before.on, stroke.on, earlier, next) > get(LATE_FIT)) {
                    move(stroke, before, hole, earlier);
                }
            }
            end = Math.max(end, stroke.off);
            before = before == null || stroke.on > before.on + get(TOUCHING) ? stroke : before;
        }
    }

    private void move(Stroke stroke, Stroke before, double hole, double earlier) {
        if (log.found(
                FaultKind.LATE,
                stroke,
                List.of(before),
                () -> "It starts " + Sentences.millis(hole)
                        + " after the note before ended; an earlier start fits the rhythm far better.",
                "Start it " + Sentences.millis(stroke.on - earlier) + " earlier.")) {
            stroke.onTick = tempoMap.tick(earlier);
            stroke.on = tempoMap.seconds(stroke.onTick);
        }
    }

    private double fit(double before, double start, double earlier, double next) {
        if (Double.isInfinite(next)) {
            return Double.NEGATIVE_INFINITY;
        }
        return rhythm.evidence(earlier - before)
                - rhythm.evidence(start - before)
                + rhythm.evidence(next - earlier)
                - rhythm.evidence(next - start);
    }

    /** The start of the next note that does not belong to the same chord. */
    private double next(List<Stroke> all, int index) {
        double later = all.get(index).on + get(TOUCHING);
        int low = index + 1;
        int high = all.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (all.get(middle).on <= later) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low < all.size() ? all.get(low).on : Double.POSITIVE_INFINITY;
    }

    private double[] holes(List<Stroke> all) {
        double[] holes = new double[all.size()];
        int size = 0;
        double end = Double.NEGATIVE_INFINITY;
        for (Stroke stroke : all) {
            double hole = Stroke.between(end, stroke.on);
            if (hole >= 0 && hole < get(LATE_MOST_SECONDS)) {
                holes[size++] = hole;
            }
            end = Math.max(end, stroke.off);
        }
        double[] sorted = Arrays.copyOf(holes, size);
        Arrays.sort(sorted);
        return sorted;
    }

    private double get(Threshold threshold) {
        return thresholds.get(threshold);
    }
}
