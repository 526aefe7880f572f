package rosinbook.take;

import static rosinbook.take.Threshold.GHOST_AFTER;
import static rosinbook.take.Threshold.GHOST_AS_LOUD;
import static rosinbook.take.Threshold.GHOST_BEFORE;
import static rosinbook.take.Threshold.GHOST_COVERED;
import static rosinbook.take.Threshold.GHOST_HARMONIC;
import static rosinbook.take.Threshold.GHOST_LONG_SECONDS;
import static rosinbook.take.Threshold.GHOST_ODD_LONG;
import static rosinbook.take.Threshold.GHOST_ODD_PITCH;
import static rosinbook.take.Threshold.GHOST_QUIETER;
import static rosinbook.take.Threshold.GHOST_RINGING;
import static rosinbook.take.Threshold.GHOST_RINGING_QUIETER;
import static rosinbook.take.Threshold.GHOST_SAME_PITCH;
import static rosinbook.take.Threshold.GHOST_SHORT;
import static rosinbook.take.Threshold.GHOST_SHORT_SECONDS;
import static rosinbook.take.Threshold.GHOST_START;
import static rosinbook.take.Threshold.GHOST_TOGETHER;
import static rosinbook.take.Threshold.GHOST_UNCOVERED;
import static rosinbook.take.Threshold.NO_GAP;
import static rosinbook.take.Threshold.TOUCHING;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds leaks from other strings. The evidence: how much quieter than what another string plays at that moment, the same or a
 * harmonic pitch, who started first, how long both sound, and whether the string merely rings on after its own last note.
 */
final class GhostFinder {
    private static final double LEAST_ADVANTAGE = -20;
    private static final double MOST_ADVANTAGE = 45;
    private static final double RINGING_WORTH_A_LOOK = -4;

    private final Thresholds thresholds;
    private final List<Sounding> strings = new ArrayList<>();

    GhostFinder(Thresholds thresholds) {
        this.thresholds = thresholds;
    }

    void drop(List<StringLine> lines, FaultLog log) {
        for (StringLine line : lines) {
            strings.add(new Sounding(line));
        }
        for (int index = 0; index < lines.size(); index++) {
            drop(lines.get(index), strings.get(index), log);
        }
    }

    private void drop(StringLine line, Sounding own, FaultLog log) {
        int[] loudness = strokeLoudness(own.strokes);
        Stroke kept = null;
        for (int index = 0; index < own.strokes.length; index++) {
            Stroke stroke = own.strokes[index];
            Suspicion worst = suspicion(stroke, own.ends[index], loudness[index], own);
            boolean ringing = worst != null
                    && worst.evidence > RINGING_WORTH_A_LOOK
                    && kept != null
                    && kept.pitch == stroke.pitch
                    && kept.gapTo(stroke) <= get(GHOST_SHORT_SECONDS)
                    && stroke.velocity <= kept.velocity - get(GHOST_RINGING_QUIETER);
            double evidence = worst == null ? -1 : worst.evidence + (ringing ? get(GHOST_RINGING) : 0);
            if (evidence > 0
                    && log.found(
                            FaultKind.GHOST,
                            stroke,
                            List.of(worst.source),
                            () -> because(stroke, worst, ringing),
                            "Drop the note.")) {
                line.remove(stroke);
            } else {
                kept = stroke;
            }
        }
    }

    /** The loudest part of a note that was broken without a gap counts for all its parts. */
    private int[] strokeLoudness(Stroke[] strokes) {
        int[] loudness = new int[strokes.length];
        for (int index = 0; index < strokes.length; index++) {
            loudness[index] = strokes[index].velocity;
            if (index > 0 && sameStroke(strokes[index - 1], strokes[index])) {
                loudness[index] = Math.max(loudness[index], loudness[index - 1]);
            }
        }
        for (int index = strokes.length - 2; index >= 0; index--) {
            if (sameStroke(strokes[index], strokes[index + 1])) {
                loudness[index] = Math.max(loudness[index], loudness[index + 1]);
            }
        }
        return loudness;
    }

    private boolean sameStroke(Stroke earlier, Stroke later) {
        return earlier.pitch == later.pitch && earlier.gapTo(later) <= get(NO_GAP);
    }

    private record Suspicion(double evidence, Stroke source, int quieter) {}

    private Suspicion suspicion(Stroke stroke, double end, int loudness, Sounding own) {
        Suspicion worst = null;
        for (Sounding other : strings) {
            if (other == own) {
                continue;
            }
            int from = other.from(stroke.on);
            int to = from;
            double covered = 0;
            double coveredByRelated = 0;
            int loudest = 0;
            while (to < other.strokes.length && Stroke.between(other.strokes[to].on, end) > 0) {
                double start = Math.max(other.strokes[to].on, stroke.on);
                double part = Math.max(0, Math.min(other.ends[to] + get(TOUCHING) * 0.75, end) - start);
                covered += part;
                coveredByRelated += related(stroke, other.strokes[to]) ? part : 0;
                loudest = stillSounds(stroke, other, to) ? Math.max(loudest, other.strokes[to].velocity) : loudest;
                to++;
            }
            for (int index = from; index < to; index++) {
                if (stillSounds(stroke, other, index) && !bowedAnew(stroke, other, index)) {
                    double seconds = related(stroke, other.strokes[index]) ? coveredByRelated : covered;
                    double share = Stroke.between(0, Math.min(1, seconds / Math.max(end - stroke.on, 1e-6)));
                    Suspicion next = suspicion(stroke, end, loudness, other.strokes[index], loudest, share);
                    worst = worst == null || next.evidence > worst.evidence ? next : worst;
                }
            }
        }
        return worst;
    }

    private boolean stillSounds(Stroke stroke, Sounding other, int index) {
        return Stroke.between(stroke.on, other.ends[index]) > -get(TOUCHING) / 2;
    }

    /** Whether the other string had ended a note and started the same one again: then the first one is no source. */
    private boolean bowedAnew(Stroke stroke, Sounding other, int index) {
        return Stroke.between(stroke.on, other.ends[index]) <= 0
                && index + 1 < other.strokes.length
                && other.strokes[index].pitch == other.strokes[index + 1].pitch
                && Stroke.between(other.ends[index], other.strokes[index + 1].on) > get(NO_GAP);
    }

    private static boolean related(Stroke stroke, Stroke source) {
        int interval = Math.abs(source.pitch - stroke.pitch);
        return interval == 0 || isHarmonic(interval);
    }

    private static boolean isHarmonic(int interval) {
        return interval == 12 || interval == 19 || interval == 24;
    }

    private Suspicion suspicion(Stroke stroke, double end, int loudness, Stroke source, int loudest, double share) {
        int interval = Math.abs(source.pitch - stroke.pitch);
        boolean harmonic = isHarmonic(interval);
        boolean related = related(stroke, source);
        int quieter = (related ? loudest : source.velocity) - loudness;
        double seconds = Stroke.between(stroke.on, end);
        double later = Stroke.between(source.on, stroke.on);
        double evidence = get(GHOST_START)
                + get(GHOST_QUIETER) * Math.max(LEAST_ADVANTAGE, Math.min(MOST_ADVANTAGE, quieter)) / 10
                + get(GHOST_COVERED) * share;
        evidence += interval == 0 ? get(GHOST_SAME_PITCH) : 0;
        evidence += harmonic ? get(GHOST_HARMONIC) : 0;
        evidence += seconds < get(GHOST_SHORT_SECONDS) ? get(GHOST_SHORT) : 0;
        evidence += later > get(TOUCHING) ? get(GHOST_AFTER) : 0;
        evidence += -later > 2 * get(TOUCHING) ? get(GHOST_BEFORE) : 0;
        evidence += Math.abs(later) <= get(TOUCHING) && quieter <= get(GHOST_AS_LOUD) ? get(GHOST_TOGETHER) : 0;
        evidence += share < 0.5 ? get(GHOST_UNCOVERED) : 0;
        evidence += !related && seconds > get(GHOST_SHORT_SECONDS) / 2 ? get(GHOST_ODD_PITCH) : 0;
        evidence += !related && seconds > get(GHOST_LONG_SECONDS) ? get(GHOST_ODD_LONG) : 0;
        return new Suspicion(evidence, source, quieter);
    }

    private static String because(Stroke stroke, Suspicion worst, boolean ringing) {
        String other = Sentences.note(worst.source.pitch) + " on string " + worst.source.string;
        String loudness = worst.quieter > 0
                ? worst.quieter + " quieter in velocity than " + other
                : "no louder in velocity than " + other;
        if (ringing) {
            return "String " + stroke.string + " rings on after its own last note while another is bowed: " + loudness
                    + ".";
        }
        int interval = Math.abs(worst.source.pitch - stroke.pitch);
        String relation = interval == 0 ? "at the same pitch" : Sentences.interval(interval) + " away";
        return "It sounds " + relation + " and is " + loudness + ", which sounds at that moment.";
    }

    private double get(Threshold threshold) {
        return thresholds.get(threshold);
    }

    /** One string as it was before anything was dropped. */
    private static final class Sounding {
        final Stroke[] strokes;
        final double[] ends;

        Sounding(StringLine line) {
            strokes = line.toList().toArray(Stroke[]::new);
            ends = new double[strokes.length];
            for (int index = 0; index < strokes.length; index++) {
                boolean last = index + 1 == strokes.length;
                ends[index] = last ? strokes[index].off : Math.min(strokes[index].off, strokes[index + 1].on);
            }
        }

        /** The first that may still sound at a moment. */
        int from(double seconds) {
            int low = 0;
            int high = strokes.length;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (strokes[middle].on <= seconds) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            return Math.max(0, low - 2);
        }
    }
}
