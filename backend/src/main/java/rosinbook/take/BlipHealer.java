package rosinbook.take;

import static rosinbook.take.Threshold.BLIP_CLOSE_GAP;
import static rosinbook.take.Threshold.BLIP_EDGE;
import static rosinbook.take.Threshold.BLIP_FADED;
import static rosinbook.take.Threshold.BLIP_FLICKER;
import static rosinbook.take.Threshold.BLIP_FLICKER_SECONDS;
import static rosinbook.take.Threshold.BLIP_HABIT;
import static rosinbook.take.Threshold.BLIP_HARMONIC;
import static rosinbook.take.Threshold.BLIP_LOWER;
import static rosinbook.take.Threshold.BLIP_NEIGHBOUR;
import static rosinbook.take.Threshold.BLIP_SCRATCH_SECONDS;
import static rosinbook.take.Threshold.BLIP_START;
import static rosinbook.take.Threshold.NO_GAP;
import static rosinbook.take.Threshold.TOUCHING;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds wrong octaves, twelfths and scratches at the start, the end or inside a note, and gives their time back to it. The
 * evidence: how short, a harmonic of its neighbours or not, and how often this string flickers so in this take.
 */
final class BlipHealer {
    private static final int MOST_INSIDE = 3;
    private static final int HABIT_OF_WHOLE_NOTES = 4;
    private static final int FAR_SEMITONES = 9;
    private static final int NEAR_SEMITONES = 5;

    private final Thresholds thresholds;
    private final StringLine line;
    private final int open;
    private final FaultLog log;
    private final int[] habits = new int[128];

    BlipHealer(Thresholds thresholds, StringLine line, int open, FaultLog log) {
        this.thresholds = thresholds;
        this.line = line;
        this.open = open;
        this.log = log;
        countHabits();
    }

    void heal() {
        healInside(false);
        healInside(true);
        healWholeNotes();
    }

    private void countHabits() {
        for (Stroke stroke = line.first(); stroke != null && stroke.next != null; stroke = stroke.next) {
            if (touching(stroke, stroke.next)) {
                countHabit(stroke, stroke.next);
                countHabit(stroke.next, stroke);
            }
        }
    }

    private void countHabit(Stroke blip, Stroke beside) {
        int interval = blip.pitch - beside.pitch;
        boolean usual = interval == 12 || interval == 19 || interval == 20 || interval == 24;
        if (usual && blip.seconds() <= flicker() * 4 / 3) {
            habits[interval]++;
        }
    }

    private double habit(int interval) {
        if (interval < 0) {
            return 0;
        }
        int count = habits[interval] + (interval == 19 ? habits[20] : interval == 20 ? habits[19] : 0);
        return get(BLIP_HABIT) * Math.min(3, Math.log(1 + count) / Math.log(2));
    }

    /** Goes along the string; after each repair it steps back, since the notes before see something new. */
    private void healInside(boolean lowerAndEdges) {
        Stroke stroke = line.first();
        while (stroke != null) {
            Stroke before = back(stroke);
            boolean changed = healBetween(stroke, lowerAndEdges);
            if (!changed && lowerAndEdges && stroke.next != null && touching(stroke, stroke.next)) {
                changed = healStart(stroke, stroke.next) || healEnd(stroke, stroke.next);
            }
            stroke = !changed ? stroke.next : before == null ? line.first() : before;
        }
    }

    private static Stroke back(Stroke stroke) {
        Stroke before = stroke;
        for (int steps = 0; steps <= MOST_INSIDE && before != null; steps++) {
            before = before.previous;
        }
        return before;
    }

    /** A note, something else, the same note again. */
    private boolean healBetween(Stroke start, boolean lowerToo) {
        List<Stroke> inside = new ArrayList<>(MOST_INSIDE);
        Stroke end = start.next;
        while (end != null && touching(end.previous, end)) {
            if (end.pitch == start.pitch) {
                return !inside.isEmpty() && healBetween(start, inside, end, lowerToo);
            }
            if (inside.size() == MOST_INSIDE) {
                return false;
            }
            inside.add(end);
            end = end.next;
        }
        return false;
    }

    private boolean healBetween(Stroke start, List<Stroke> inside, Stroke end, boolean lowerToo) {
        boolean lower = inside.stream().anyMatch(stroke -> stroke.pitch < start.pitch);
        if (lower && !lowerToo) {
            return false;
        }
        double seconds = inside.stream().mapToDouble(Stroke::seconds).sum();
        double longest = inside.stream().mapToDouble(Stroke::seconds).max().orElseThrow();
        double harmonic = inside.stream()
                .mapToDouble(stroke -> Harmonics.share(stroke.pitch, start.pitch))
                .min()
                .orElseThrow();
        int nearest = inside.stream()
                .mapToInt(stroke -> Math.abs(stroke.pitch - start.pitch))
                .min()
                .orElseThrow();
        double evidence = get(BLIP_START) + shortness(seconds);
        if (harmonic > 0) {
            evidence += get(BLIP_HARMONIC) * harmonic
                    + inside.stream()
                            .mapToDouble(stroke -> habit(stroke.pitch - start.pitch))
                            .min()
                            .orElseThrow();
        } else if (nearest <= 2) {
            evidence += longest > flicker() / 2 ? -get(BLIP_NEIGHBOUR) : get(BLIP_NEIGHBOUR);
        }
        evidence += end.previous.gapTo(end) < get(NO_GAP) ? get(BLIP_CLOSE_GAP) : 0;
        if (lower && Math.min(start.seconds(), end.seconds()) < flicker() * 4 / 3) {
            evidence += get(BLIP_LOWER);
        }
        Stroke first = inside.get(0);
        if (evidence <= 0 || !mend(first, start, "inside a held note")) {
            return false;
        }
        start.endWhereStarts(first);
        end.startAt(first);
        end.acrossBlip = true;
        for (Stroke stroke : inside) {
            line.swallow(start, stroke);
        }
        start.loudest = Math.max(start.velocity, start.loudest);
        return true;
    }

    private boolean healStart(Stroke blip, Stroke note) {
        double evidence = edge(blip, note);
        boolean follows = blip.previous != null && touching(blip.previous, blip);
        boolean scratch = blip.seconds() <= get(BLIP_SCRATCH_SECONDS)
                && note.seconds() > get(BLIP_SCRATCH_SECONDS) * 1.5
                && Math.abs(blip.pitch - note.pitch) > 2
                && !follows;
        boolean likely = note.pitch < blip.pitch || blip.pitch < open || blip.seconds() <= flicker();
        boolean closerBefore =
                follows && Harmonics.share(blip.pitch, blip.previous.pitch) > Harmonics.share(blip.pitch, note.pitch);
        if (!(evidence > 0 || scratch) || !likely || note.seconds() <= blip.seconds() || closerBefore) {
            return false;
        }
        if (!mend(blip, note, "at the start of a note")) {
            return false;
        }
        note.startAt(blip);
        line.swallow(note, blip);
        return true;
    }

    private boolean healEnd(Stroke note, Stroke blip) {
        double evidence = edge(blip, note);
        boolean last = blip.next == null || !touching(blip, blip.next);
        boolean scratch = last
                && blip.seconds() <= get(BLIP_SCRATCH_SECONDS)
                && (blip.velocity < note.loudest - get(BLIP_FADED) || Math.abs(blip.pitch - note.pitch) > 2);
        boolean likely = blip.pitch > note.pitch || blip.pitch < open || blip.seconds() <= flicker();
        boolean closest = last
                || Harmonics.share(note.pitch, blip.pitch) == 1 && Harmonics.share(blip.next.pitch, blip.pitch) < 1;
        if (!(evidence > 0 || scratch) || !likely || note.seconds() <= blip.seconds() || !closest) {
            return false;
        }
        if (!mend(blip, note, "at the end of a note")) {
            return false;
        }
        note.endAt(blip);
        line.swallow(note, blip);
        return true;
    }

    /** At an edge only harmonics of the note count; anything else has to be a scratch. */
    private double edge(Stroke blip, Stroke note) {
        double harmonic = Harmonics.share(blip.pitch, note.pitch);
        if (harmonic == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        return get(BLIP_START)
                + get(BLIP_EDGE)
                + shortness(blip.seconds())
                + get(BLIP_HARMONIC) * harmonic
                + habit(blip.pitch - note.pitch);
    }

    /** A whole note heard a harmonic too high, on a string that often does so, between notes far below it. */
    private void healWholeNotes() {
        for (Stroke stroke = line.first(); stroke != null; stroke = stroke.next) {
            for (int interval : new int[] {19, 12, 20}) {
                if (habits[interval] >= HABIT_OF_WHOLE_NOTES
                        && stroke.pitch - interval >= open
                        && stroke.key() >= interval
                        && fitsBetween(stroke, interval)
                        && mendWhole(stroke, interval)) {
                    stroke.pitch -= interval;
                    break;
                }
            }
        }
    }

    private boolean fitsBetween(Stroke stroke, int interval) {
        double near = get(TOUCHING) * 4;
        boolean before = stroke.previous != null && stroke.previous.gapTo(stroke) < near;
        boolean after = stroke.next != null && stroke.gapTo(stroke.next) < near;
        return (before || after)
                && (!before || fitsBeside(stroke, stroke.previous, interval))
                && (!after || fitsBeside(stroke, stroke.next, interval));
    }

    private static boolean fitsBeside(Stroke stroke, Stroke beside, int interval) {
        return Math.abs(stroke.pitch - beside.pitch) >= FAR_SEMITONES
                && Math.abs(stroke.pitch - interval - beside.pitch) <= NEAR_SEMITONES;
    }

    private boolean mendWhole(Stroke stroke, int interval) {
        int pitch = stroke.pitch;
        int count = habits[interval];
        return log.found(
                FaultKind.BLIP,
                stroke,
                List.of(),
                () -> "It lies far above its neighbours, and this string flickers " + Sentences.interval(interval)
                        + " too high " + count + " times in this take.",
                "Lower the note to " + Sentences.note(pitch - interval) + ".");
    }

    private boolean mend(Stroke blip, Stroke note, String where) {
        int interval = Math.abs(blip.pitch - note.pitch);
        double seconds = blip.seconds();
        String name = Sentences.note(note.pitch);
        return log.found(
                FaultKind.BLIP,
                blip,
                List.of(note),
                () -> "It lasts " + Sentences.millis(seconds) + " " + where + " " + Sentences.interval(interval)
                        + " away, " + name + ".",
                "Give its time to " + name + ".");
    }

    private double shortness(double seconds) {
        if (seconds <= flicker()) {
            return get(BLIP_FLICKER);
        }
        if (seconds <= flicker() * 1.5) {
            return get(BLIP_FLICKER) / 2;
        }
        if (seconds <= flicker() * 2.5) {
            return get(BLIP_FLICKER) / 4;
        }
        return seconds <= flicker() * 5 ? -get(BLIP_FLICKER) / 6 : -get(BLIP_FLICKER);
    }

    private boolean touching(Stroke earlier, Stroke later) {
        return Math.abs(earlier.gapTo(later)) <= get(TOUCHING);
    }

    private double flicker() {
        return get(BLIP_FLICKER_SECONDS);
    }

    private double get(Threshold threshold) {
        return thresholds.get(threshold);
    }
}
