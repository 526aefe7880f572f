package rosinbook.take;

import static rosinbook.take.Threshold.BOW_ACROSS_BLIP;
import static rosinbook.take.Threshold.BOW_EVEN;
import static rosinbook.take.Threshold.BOW_EVEN_VELOCITY;
import static rosinbook.take.Threshold.BOW_GAP;
import static rosinbook.take.Threshold.BOW_LOUDER;
import static rosinbook.take.Threshold.BOW_LOUDER_VELOCITY;
import static rosinbook.take.Threshold.BOW_MUCH_LOUDER;
import static rosinbook.take.Threshold.BOW_MUCH_LOUDER_VELOCITY;
import static rosinbook.take.Threshold.BOW_SOFTER_VELOCITY;
import static rosinbook.take.Threshold.BOW_START;
import static rosinbook.take.Threshold.BOW_TOGETHER;
import static rosinbook.take.Threshold.BOW_WIDE_GAP;
import static rosinbook.take.Threshold.BOW_WIDE_GAP_SECONDS;
import static rosinbook.take.Threshold.NO_GAP;
import static rosinbook.take.Threshold.RHYTHM;
import static rosinbook.take.Threshold.SPLIT_GAP_SECONDS;
import static rosinbook.take.Threshold.TOUCHING;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Joins held notes that were broken, and leaves repeated bows alone. For a run of touching notes of one pitch it weighs every
 * way of placing bow changes (dynamic programming) by the gap and the loudness at each, by what other strings do at that moment,
 * and by how usual the resulting durations are in this take.
 */
final class SplitJoiner {
    private static final int MOST_PARTS = 40;
    /** Evidence closer than this is equal, and fewer bow changes win. */
    private static final double TIE = 1e-6;

    private final Thresholds thresholds;
    private final Rhythm rhythm;
    private final FaultLog log;

    SplitJoiner(Thresholds thresholds, Rhythm rhythm, FaultLog log) {
        this.thresholds = thresholds;
        this.rhythm = rhythm;
        this.log = log;
    }

    /** @param index the line's place among all lines */
    void join(StringLine line, int index) {
        Stroke stroke = line.first();
        while (stroke != null) {
            List<Stroke> run = new ArrayList<>();
            run.add(stroke);
            while (stroke.next != null && follows(stroke, stroke.next)) {
                stroke = stroke.next;
                run.add(stroke);
            }
            stroke = stroke.next;
            if (run.size() > 1) {
                join(line, index, run);
            }
        }
    }

    private boolean follows(Stroke earlier, Stroke later) {
        double gap = earlier.gapTo(later);
        return earlier.pitch == later.pitch && gap <= get(SPLIT_GAP_SECONDS) && gap >= -get(TOUCHING);
    }

    private void join(StringLine line, int index, List<Stroke> run) {
        boolean[] bowChange = bowChanges(run, index);
        Stroke head = run.get(0);
        for (int part = 1; part < run.size(); part++) {
            Stroke stroke = run.get(part);
            if (bowChange[part] || !mend(head, stroke)) {
                head = stroke;
                continue;
            }
            head.endAt(stroke);
            line.swallow(head, stroke);
        }
    }

    /** Parts that only a blip kept apart are mended with the blip. */
    private boolean mend(Stroke head, Stroke stroke) {
        if (stroke.acrossBlip) {
            log.mended();
            return true;
        }
        return log.found(
                FaultKind.SPLIT, stroke, List.of(head), () -> because(head, stroke), "Join it to the note before.");
    }

    private boolean[] bowChanges(List<Stroke> run, int line) {
        int parts = run.size();
        double[] starts = new double[parts + 1];
        for (int part = 0; part < parts; part++) {
            starts[part] = run.get(part).on;
        }
        starts[parts] = end(run.get(parts - 1));
        double[] best = new double[parts + 1];
        int[] from = new int[parts + 1];
        Arrays.fill(best, 1, parts + 1, Double.NEGATIVE_INFINITY);
        for (int end = 1; end <= parts; end++) {
            for (int start = Math.max(0, end - MOST_PARTS); start < end; start++) {
                double evidence = best[start]
                        + (start == 0 ? 0 : bowChange(run.get(start - 1), run.get(start), line))
                        + get(RHYTHM) * rhythm.evidence(line, starts[start], starts[end]);
                if (evidence > best[end] + TIE) {
                    best[end] = evidence;
                    from[end] = start;
                }
            }
        }
        boolean[] changes = new boolean[parts];
        for (int end = parts; end > 0; end = from[end]) {
            changes[from[end]] = true;
        }
        return changes;
    }

    /** A run lasts until the next start anywhere, if that comes soon after it ends. */
    private double end(Stroke last) {
        double next = rhythm.next(last.on + get(TOUCHING));
        return next < last.off + 3 * get(TOUCHING) ? next : last.off + get(TOUCHING) / 2;
    }

    private double bowChange(Stroke earlier, Stroke later, int line) {
        double gap = earlier.gapTo(later);
        int louder = later.velocity - earlier.velocity;
        double evidence = get(BOW_START);
        if (gap >= get(NO_GAP)) {
            evidence += gap < get(BOW_WIDE_GAP_SECONDS) ? get(BOW_GAP) : get(BOW_WIDE_GAP);
        }
        evidence += later.acrossBlip ? get(BOW_ACROSS_BLIP) : 0;
        evidence += loudness(louder);
        evidence += louder > get(BOW_SOFTER_VELOCITY) && rhythm.together(line, later.on) ? get(BOW_TOGETHER) : 0;
        return evidence;
    }

    private double loudness(int louder) {
        if (louder > get(BOW_MUCH_LOUDER_VELOCITY)) {
            return get(BOW_MUCH_LOUDER);
        }
        if (louder > get(BOW_LOUDER_VELOCITY)) {
            return get(BOW_LOUDER);
        }
        return louder >= get(BOW_EVEN_VELOCITY) ? get(BOW_EVEN) : get(BOW_EVEN) / 2;
    }

    private String because(Stroke earlier, Stroke later) {
        double gap = earlier.gapTo(later);
        String pause = gap < get(NO_GAP) ? "without a gap" : "after " + Sentences.millis(gap);
        int louder = later.velocity - earlier.velocity;
        String swell = louder > get(BOW_LOUDER_VELOCITY)
                ? "it is " + louder + " louder, as a held note that swells"
                : "its start fits no rhythm of this take";
        return "The same pitch goes on " + pause + ", and " + swell + ".";
    }

    private double get(Threshold threshold) {
        return thresholds.get(threshold);
    }
}
