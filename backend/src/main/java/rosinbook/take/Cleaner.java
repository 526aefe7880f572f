package rosinbook.take;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import rosinbook.take.smf.TempoMap;

/**
 * Finds the faults of a take and mends them. It goes over the take until nothing more is found, so that a cleaned take is clean.
 *
 * @param thresholds the figures to go by
 */
public record Cleaner(Thresholds thresholds) {
    /** A cleaner with the standard thresholds. */
    public static final Cleaner STANDARD = new Cleaner(Thresholds.STANDARD);

    private static final int MOST_ROUNDS = 1000;

    /** Finds and mends everything. */
    public Cleaning clean(Take take) {
        return clean(take, Set.of());
    }

    /**
     * Finds everything, and mends what is not refused.
     *
     * @throws CancellationException if the thread is interrupted meanwhile
     * @param refused ids of faults to leave as they are; unknown ones count for nothing
     */
    public Cleaning clean(Take take, Collection<String> refused) {
        FaultLog log = new FaultLog(take, refused);
        List<StringLine> lines = lines(take);
        lines.forEach(line -> endHanging(line, take, log));
        lines.forEach(line -> dropUnheard(line, log));
        int before = -1;
        for (int round = 0; round < MOST_ROUNDS && log.repairs() != before; round++) {
            before = log.repairs();
            stopIfInterrupted();
            round(take, lines, log);
        }
        return new Cleaning(take, notes(lines), log.faults(), thresholds);
    }

    /** Who has waited long enough interrupts the thread; a round is never long. */
    private static void stopIfInterrupted() {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("cleaning was interrupted");
        }
    }

    private void round(Take take, List<StringLine> lines, FaultLog log) {
        for (StringLine line : lines) {
            for (Stroke stroke = line.first(); stroke != null; stroke = stroke.next) {
                stroke.velocity = stroke.loudest;
                stroke.acrossBlip = false;
            }
        }
        if (take.stringsApart()) {
            new GhostFinder(thresholds).drop(lines, log);
        }
        for (StringLine line : lines) {
            int open = open(take, line.string);
            new BlipHealer(thresholds, line, open, log).heal();
            dropImpossible(line, open, top(take, line.string), log);
        }
        Rhythm rhythm = new Rhythm(thresholds, lines);
        SplitJoiner joiner = new SplitJoiner(thresholds, rhythm, log);
        for (int index = 0; index < lines.size(); index++) {
            joiner.join(lines.get(index), index);
        }
        StaircaseFolder folder = new StaircaseFolder(thresholds, rhythm, log);
        lines.forEach(folder::fold);
        new LateFinder(thresholds, rhythm, take.tempoMap(), log).move(lines);
    }

    private static List<StringLine> lines(Take take) {
        List<StringLine> lines = new ArrayList<>();
        for (int string = 1; string <= take.tuning().strings(); string++) {
            lines.add(new StringLine(string));
        }
        for (TakeNote note : take.notes()) {
            lines.get(note.string() - 1).append(new Stroke(note));
        }
        return lines;
    }

    private static int open(Take take, int string) {
        boolean apart = take.layout().by() != StringLayout.By.NOTHING;
        return take.tuning().open(apart ? string : take.tuning().strings()).midi();
    }

    private int top(Take take, int string) {
        boolean apart = take.layout().by() != StringLayout.By.NOTHING;
        int open = take.tuning().open(apart ? string : 1).midi();
        return open + (int) thresholds.get(Threshold.FINGERBOARD);
    }

    private void endHanging(StringLine line, Take take, FaultLog log) {
        for (Stroke stroke = line.first(); stroke != null; stroke = stroke.next) {
            if (take.notes().get(stroke.id).hanging()) {
                Stroke next = stroke.next;
                List<Stroke> involved = next == null ? List.of() : List.of(next);
                boolean leavesNothing = next != null && next.onTick <= stroke.onTick;
                String repair = next == null
                        ? "Let it last until the end of the take."
                        : leavesNothing
                                ? "Drop it: the next note of its string starts at the same moment."
                                : "End it just before the next note of its string.";
                boolean repaired =
                        log.found(FaultKind.HANGING, stroke, involved, () -> "The file never ends this note.", repair);
                if (repaired && leavesNothing) {
                    line.remove(stroke);
                } else if (repaired && next != null) {
                    endBefore(stroke, next, take.tempoMap());
                }
            }
        }
    }

    /** A note that ends as it starts sounds for nobody; left in, it would lie beside whatever else starts then. */
    private static void dropUnheard(StringLine line, FaultLog log) {
        for (Stroke stroke = line.first(); stroke != null; stroke = stroke.next) {
            if (stroke.offTick <= stroke.onTick
                    && log.found(FaultKind.BLIP, stroke, List.of(), () -> "It ends as it starts.", "Drop the note.")) {
                line.remove(stroke);
            }
        }
    }

    /** Leaves a gap if there is room, so that the next note counts as bowed anew even at the same pitch. */
    private void endBefore(Stroke stroke, Stroke next, TempoMap tempoMap) {
        double gap = thresholds.get(Threshold.BOW_WIDE_GAP_SECONDS);
        long withGap = Math.min(next.onTick, tempoMap.tick(next.on - gap));
        stroke.offTick = withGap > stroke.onTick ? withGap : next.onTick;
        stroke.off = Math.max(stroke.on, tempoMap.seconds(stroke.offTick));
    }

    private static void dropImpossible(StringLine line, int open, int top, FaultLog log) {
        for (Stroke stroke = line.first(); stroke != null; stroke = stroke.next) {
            if (stroke.pitch >= open && stroke.pitch <= top) {
                continue;
            }
            boolean below = stroke.pitch < open;
            FaultKind kind = below ? FaultKind.BELOW_OPEN : FaultKind.ABOVE_FINGERBOARD;
            String because = below
                    ? "String " + line.string + " gives nothing below its open " + Sentences.note(open) + "."
                    : "The fingerboard of string " + line.string + " ends at " + Sentences.note(top) + ".";
            if (log.found(kind, stroke, List.of(), () -> because, "Drop the note.")) {
                line.remove(stroke);
            }
        }
    }

    private static List<CleanNote> notes(List<StringLine> lines) {
        List<CleanNote> notes = new ArrayList<>();
        for (StringLine line : lines) {
            for (Stroke stroke = line.first(); stroke != null; stroke = stroke.next) {
                notes.add(stroke.toNote());
            }
        }
        notes.sort(Comparator.comparing(CleanNote::note, Notes.ORDER));
        for (int id = 0; id < notes.size(); id++) {
            CleanNote note = notes.get(id);
            notes.set(id, new CleanNote(note.note().withId(id), note.from(), note.glide()));
        }
        return notes;
    }
}
