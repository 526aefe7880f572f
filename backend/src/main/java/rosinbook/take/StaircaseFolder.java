package rosinbook.take;

import static rosinbook.take.Threshold.BLIP_FLICKER_SECONDS;
import static rosinbook.take.Threshold.NO_GAP;
import static rosinbook.take.Threshold.STAIRCASE_CHROMATIC;
import static rosinbook.take.Threshold.STAIRCASE_GAP;
import static rosinbook.take.Threshold.STAIRCASE_LONG_STEP;
import static rosinbook.take.Threshold.STAIRCASE_LONG_STEP_SECONDS;
import static rosinbook.take.Threshold.STAIRCASE_MOST_SECONDS;
import static rosinbook.take.Threshold.STAIRCASE_SHORT_STEP;
import static rosinbook.take.Threshold.STAIRCASE_START;
import static rosinbook.take.Threshold.STAIRCASE_UNUSUAL;
import static rosinbook.take.Threshold.STAIRCASE_USUAL;
import static rosinbook.take.Threshold.TOUCHING;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds slides that were heard as steps, and leaves scales alone. Steps in one direction between a note and the next long one
 * are a slide if they are short, by semitones, without gaps, and unusual as durations in this take. A step may be heard an
 * octave or a twelfth off.
 */
final class StaircaseFolder {
    private static final int[] MISHEARD = {0, -12, -19, 12};

    private final Thresholds thresholds;
    private final Rhythm rhythm;
    private final FaultLog log;

    StaircaseFolder(Thresholds thresholds, Rhythm rhythm, FaultLog log) {
        this.thresholds = thresholds;
        this.rhythm = rhythm;
        this.log = log;
    }

    void fold(StringLine line) {
        Stroke departure = line.first();
        while (departure != null) {
            if (!fold(line, departure, 1) && !fold(line, departure, -1)) {
                departure = departure.next;
            }
        }
    }

    private boolean fold(StringLine line, Stroke departure, int direction) {
        List<Stroke> steps = new ArrayList<>();
        List<Integer> pitches = new ArrayList<>();
        pitches.add(departure.pitch);
        Stroke stroke = departure;
        while (stroke.next != null && touching(stroke, stroke.next)) {
            int pitch = heard(stroke, stroke.next, pitches.get(pitches.size() - 1), direction, steps.isEmpty());
            if (pitch < 0) {
                break;
            }
            stroke = stroke.next;
            steps.add(stroke);
            pitches.add(pitch);
            if (stroke.seconds() > get(STAIRCASE_MOST_SECONDS)) {
                break;
            }
        }
        while (!steps.isEmpty() && pitches.get(steps.size()) != steps.get(steps.size() - 1).pitch) {
            pitches.remove(steps.size());
            steps.remove(steps.size() - 1);
        }
        if (steps.size() < 2) {
            return false;
        }
        Stroke arrival = steps.remove(steps.size() - 1);
        double longest = steps.stream().mapToDouble(Stroke::seconds).max().orElseThrow();
        if (evidence(departure, steps, pitches) <= 0 || arrival.seconds() < longest * 0.9) {
            return false;
        }
        return mend(line, departure, steps, arrival);
    }

    /** The pitch of the next step, which may be heard a harmonic off; below 0 if there is none in this direction. */
    private int heard(Stroke stroke, Stroke next, int last, int direction, boolean first) {
        boolean shortOne = stroke.seconds() < flicker() || next.seconds() < flicker();
        int most = shortOne || first ? 3 : 2;
        int choices = next.seconds() <= flicker() * 5 / 3 ? MISHEARD.length : 1;
        int nearest = -1;
        for (int choice = 0; choice < choices; choice++) {
            int pitch = next.pitch + MISHEARD[choice];
            int step = direction * (pitch - last);
            if (step > 0 && step <= most && (nearest < 0 || step < direction * (nearest - last))) {
                nearest = pitch;
            }
        }
        return nearest;
    }

    private double evidence(Stroke departure, List<Stroke> steps, List<Integer> pitches) {
        double evidence = get(STAIRCASE_START);
        Stroke before = departure;
        for (int index = 0; index < steps.size(); index++) {
            Stroke step = steps.get(index);
            double seconds = step.seconds();
            evidence += length(seconds);
            boolean chromatic = Math.abs(pitches.get(index + 1) - pitches.get(index)) == 1
                    && Math.abs(pitches.get(index + 2) - pitches.get(index + 1)) == 1;
            evidence += chromatic ? get(STAIRCASE_CHROMATIC) : 0;
            if (seconds > flicker() * 7 / 6) {
                evidence += Math.min(
                        get(STAIRCASE_UNUSUAL), Math.max(get(STAIRCASE_USUAL), -0.5 * rhythm.evidence(seconds)));
            }
            evidence += before.gapTo(step) > get(NO_GAP) ? get(STAIRCASE_GAP) : 0;
            before = step;
        }
        return evidence;
    }

    private double length(double seconds) {
        if (seconds <= flicker()) {
            return get(STAIRCASE_SHORT_STEP);
        }
        if (seconds <= flicker() * 1.4) {
            return get(STAIRCASE_SHORT_STEP) / 2;
        }
        return seconds <= get(STAIRCASE_LONG_STEP_SECONDS) ? 0 : get(STAIRCASE_LONG_STEP);
    }

    private boolean mend(StringLine line, Stroke departure, List<Stroke> steps, Stroke arrival) {
        Stroke first = steps.get(0);
        List<Stroke> involved = new ArrayList<>(steps);
        involved.add(departure);
        involved.add(arrival);
        int count = steps.size();
        double seconds = arrival.on - first.on;
        String from = Sentences.note(departure.pitch);
        String to = Sentences.note(arrival.pitch);
        if (!log.found(
                FaultKind.STAIRCASE,
                first,
                involved,
                () -> count + (count == 1 ? " step" : " steps") + " in " + Sentences.millis(seconds)
                        + " lead straight from " + from + " to " + to + ", too quick to be played one by one.",
                "Slide from " + from + " to " + to + ".")) {
            return false;
        }
        long leavesTick = departure.offTick;
        departure.endWhereStarts(arrival);
        for (Stroke step : steps) {
            line.swallow(departure, step);
        }
        if (leavesTick < arrival.onTick) {
            departure.glide = new Glide(leavesTick, arrival.onTick, arrival.pitch - departure.pitch);
        }
        return true;
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
