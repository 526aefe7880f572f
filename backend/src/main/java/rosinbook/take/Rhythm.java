package rosinbook.take;

import static rosinbook.take.Threshold.NO_GAP;
import static rosinbook.take.Threshold.RHYTHM_JITTER_SECONDS;
import static rosinbook.take.Threshold.SHORTEST_STROKE_SECONDS;
import static rosinbook.take.Threshold.TOUCHING;

import java.util.Arrays;
import java.util.List;
import java.util.function.BiPredicate;

/**
 * The durations usual in one take: how much more likely a time between two starts is here than anywhere. Learned from the starts
 * that are beyond doubt, as a smooth density over the logarithm of time.
 *
 * <p>Everything is measured against the shortest stroke, so that a take played slower, with thresholds stretched alike, gives
 * the same figures.
 */
final class Rhythm {
    private static final double STEP = 0.01;
    private static final double LOWEST = -2;
    private static final int BINS = 700;
    /** The density anywhere: times from 50 ms to 5 s, evenly over their logarithm. */
    private static final double ANYWHERE = 1 / Math.log(100);

    private static final double ANYWHERE_NOTES = 10;
    private static final double TEMPO_SPREAD = 0.03;
    private static final double TOO_SHORT = -3;
    private static final int SWELL = 4;
    private static final double LONGEST_STROKES = 60;

    private final Thresholds thresholds;
    private final double shortest;
    private final double[] logRatios = new double[BINS];
    private final double[][] certain;
    private final double[] starts;
    private final double[][] others;
    private final double[][] othersSums;

    Rhythm(Thresholds thresholds, List<StringLine> lines) {
        this.thresholds = thresholds;
        shortest = Math.max(1e-4, get(SHORTEST_STROKE_SECONDS));
        certain = starts(lines, (earlier, later) -> false);
        starts = apart(merged(starts(lines, this::innocent), -1));
        fill(starts);
        double[][] possible = starts(lines, this::unsuspicious);
        others = new double[lines.size()][];
        othersSums = new double[lines.size()][];
        for (int line = 0; line < lines.size(); line++) {
            others[line] = apart(merged(possible, line));
            othersSums[line] = sums(others[line]);
        }
    }

    /**
     * Evidence that two starts lie so far apart: logarithm of how much more likely it is in this take than anywhere.
     *
     * @param seconds above 0
     */
    double evidence(double seconds) {
        double place = (Math.log(Math.max(seconds, 1e-9) / shortest) - LOWEST) / STEP;
        int bin = (int) Math.max(0, Math.min(BINS - 2.0, Math.floor(place)));
        double part = Math.max(0, Math.min(1, place - bin));
        double evidence = logRatios[bin] * (1 - part) + logRatios[bin + 1] * part;
        return seconds < shortest ? evidence + TOO_SHORT : evidence;
    }

    /** The same for all times between starts from one moment to another, if those on other strings are where they are. */
    double evidence(int line, double from, double to) {
        double[] other = others[line];
        int first = after(other, from + get(TOUCHING));
        int end = before(other, to - get(TOUCHING));
        if (first >= end) {
            return evidence(to - from);
        }
        double[] sums = othersSums[line];
        return evidence(other[first] - from) + sums[end - 1] - sums[first] + evidence(to - other[end - 1]);
    }

    /** Whether another string starts a note at that moment. */
    boolean together(int line, double seconds) {
        for (int other = 0; other < certain.length; other++) {
            if (other != line) {
                int index = before(certain[other], seconds - get(TOUCHING));
                if (index < certain[other].length && certain[other][index] < seconds + get(TOUCHING)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** The next start on any string, or infinity. */
    double next(double seconds) {
        int index = after(starts, seconds);
        return index < starts.length ? starts[index] : Double.POSITIVE_INFINITY;
    }

    /** A note that goes on where the one before ended, at the same pitch: a split, or a bow change. */
    private boolean doubtful(Stroke earlier, Stroke later) {
        return earlier.pitch == later.pitch && earlier.gapTo(later) < get(NO_GAP);
    }

    private boolean unsuspicious(Stroke earlier, Stroke later) {
        double least = shortest * 1.4;
        return later.velocity - earlier.velocity <= SWELL && earlier.seconds() >= least && later.seconds() >= least;
    }

    private boolean innocent(Stroke earlier, Stroke later) {
        return unsuspicious(earlier, later) && !later.acrossBlip;
    }

    /** The starts of each string, those in doubt only where {@code yetCounts} says so. */
    private double[][] starts(List<StringLine> lines, BiPredicate<Stroke, Stroke> yetCounts) {
        double[][] starts = new double[lines.size()][];
        for (int line = 0; line < starts.length; line++) {
            starts[line] = lines.get(line).toList().stream()
                    .filter(stroke -> stroke.previous == null
                            || !doubtful(stroke.previous, stroke)
                            || yetCounts.test(stroke.previous, stroke))
                    .mapToDouble(stroke -> stroke.on)
                    .toArray();
        }
        return starts;
    }

    private static double[] merged(double[][] starts, int without) {
        int size = 0;
        for (int line = 0; line < starts.length; line++) {
            size += line == without ? 0 : starts[line].length;
        }
        double[] all = new double[size];
        int at = 0;
        for (int line = 0; line < starts.length; line++) {
            if (line != without) {
                System.arraycopy(starts[line], 0, all, at, starts[line].length);
                at += starts[line].length;
            }
        }
        Arrays.sort(all);
        return all;
    }

    /** Starts that fall together count once. */
    private double[] apart(double[] sorted) {
        double[] apart = new double[sorted.length];
        int size = 0;
        for (double start : sorted) {
            if (size == 0 || Stroke.between(apart[size - 1], start) > get(TOUCHING) * 1.25) {
                apart[size++] = start;
            }
        }
        return Arrays.copyOf(apart, size);
    }

    private void fill(double[] sorted) {
        double[] counts = new double[BINS];
        int size = 0;
        for (int index = 1; index < sorted.length; index++) {
            double seconds = Stroke.between(sorted[index - 1], sorted[index]);
            if (seconds > shortest * 1.15 && seconds < shortest * LONGEST_STROKES) {
                double place = (Math.log(seconds / shortest) - LOWEST) / STEP;
                int bin = (int) Math.floor(place);
                counts[bin] += bin + 1 - place;
                counts[bin + 1] += place - bin;
                size++;
            }
        }
        for (int bin = 0; bin < BINS; bin++) {
            double seconds = shortest * Math.exp(LOWEST + bin * STEP);
            double spread = Math.hypot(get(RHYTHM_JITTER_SECONDS) / seconds, TEMPO_SPREAD);
            int reach = (int) Math.min(BINS, Math.ceil(3 * spread / STEP));
            double density = 0;
            for (int near = Math.max(0, bin - reach); near <= Math.min(BINS - 1, bin + reach); near++) {
                double away = (near - bin) * STEP / spread;
                density += counts[near] * Math.exp(-0.5 * away * away);
            }
            density /= spread * Math.sqrt(2 * Math.PI);
            logRatios[bin] = Math.log((density / ANYWHERE + ANYWHERE_NOTES) / (size + ANYWHERE_NOTES));
        }
    }

    private double[] sums(double[] sorted) {
        double[] sums = new double[sorted.length];
        for (int index = 1; index < sorted.length; index++) {
            sums[index] = sums[index - 1] + evidence(sorted[index] - sorted[index - 1]);
        }
        return sums;
    }

    /** Index of the first beyond a moment. */
    private static int after(double[] sorted, double seconds) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] <= seconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Index of the first at or beyond a moment: how many lie before it. */
    private static int before(double[] sorted, double seconds) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] < seconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private double get(Threshold threshold) {
        return thresholds.get(threshold);
    }
}
