package rosinbook.take;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Clean playing made by a generator, with faults put into it: how many are found (recall), and how many of those found were put
 * there (precision), over a hundred pieces with fixed seeds. The floors lie a little under what is reached.
 */
class InjectedFaultsTest {
    private static final int PIECES = 100;

    private record Injected(FaultKind kind, int string, double at) {}

    @Test
    void clean_playing_is_left_alone() {
        for (int seed = 0; seed < PIECES; seed++) {
            List<TakeNote> notes = playing(new Random(seed));
            Take take = Playing.take(Tuning.VIOLIN, notes);
            assertEquals(List.of(), Cleaner.STANDARD.clean(take).faults(), "seed " + seed);
        }
    }

    @Test
    void injected_faults_are_found_and_little_else() {
        Map<FaultKind, int[]> counts = new EnumMap<>(FaultKind.class);
        for (FaultKind kind : FaultKind.values()) {
            counts.put(kind, new int[3]);
        }
        for (int seed = 0; seed < PIECES; seed++) {
            Random random = new Random(seed);
            List<TakeNote> notes = playing(random);
            List<Injected> injected = inject(notes, random);
            List<Fault> found = new ArrayList<>(
                    Cleaner.STANDARD.clean(Playing.take(Tuning.VIOLIN, notes)).faults());
            for (Fault fault : found) {
                counts.get(fault.kind())[1]++;
            }
            for (Injected fault : injected) {
                counts.get(fault.kind)[0]++;
                if (found.removeIf(one -> one.kind() == fault.kind
                        && one.string() == fault.string
                        && Math.abs(one.atSeconds() - fault.at) < 0.002)) {
                    counts.get(fault.kind)[2]++;
                }
            }
        }
        StringBuilder table = new StringBuilder();
        counts.forEach((kind, count) -> table.append(String.format(
                "%s: injected %d, found %d, precision %.3f, recall %.3f%n",
                kind.label(), count[0], count[1], count[2] / (double) count[1], count[2] / (double) count[0])));
        System.out.print(table);
        for (FaultKind kind : FaultKind.values()) {
            int[] count = counts.get(kind);
            boolean softEvidence = kind == FaultKind.SPLIT || kind == FaultKind.LATE;
            assertTrue(count[2] >= (softEvidence ? 0.8 : 0.95) * count[0], "recall of " + kind + "\n" + table);
            assertTrue(count[2] >= 0.95 * count[1], "precision of " + kind + "\n" + table);
        }
    }

    /** A melody in a steady beat with repeats, slurs, crossings, double stops, unisons, scales and trills; 60 events. */
    private static List<TakeNote> playing(Random random) {
        List<TakeNote> notes = new ArrayList<>();
        double beat = 0.36 + random.nextDouble() * 0.3;
        double at = 0.5;
        int string = 3;
        int above = 2;
        for (int event = 0; event < 60; event++) {
            double length = beat * (new double[] {0.5, 1, 1, 1, 2, 3})[random.nextInt(6)];
            int kind = random.nextInt(12);
            if (kind < 2) {
                for (int bow = 0; bow < 4; bow++) {
                    notes.add(bowed(random, string, above, at, beat / 2, true));
                    at += beat / 2;
                }
                continue;
            }
            if (kind == 2) {
                for (int step = 0; step < 8; step++) {
                    notes.add(bowed(random, string, step, at, beat / 2, step % 2 == 0));
                    at += beat / 2;
                }
                continue;
            }
            if (kind == 3) {
                for (int turn = 0; turn < 8; turn++) {
                    notes.add(bowed(random, string, 3 + turn % 2 * 2, at, beat / 4, false));
                    at += beat / 4;
                }
                at += beat / 4;
                continue;
            }
            if (kind == 4 && string > 1) {
                notes.add(bowed(random, string, 7, at, length, true));
                notes.add(bowed(random, string - 1, random.nextInt(3), at + 0.004, length, true));
                at += length;
                continue;
            }
            notes.add(bowed(random, string, above, at, length, random.nextInt(4) > 0));
            at += length;
            int next = random.nextInt(9);
            above = next == above ? next + 1 : next;
            string = random.nextInt(3) == 0 ? 1 + random.nextInt(4) : string;
        }
        return withGaps(notes);
    }

    /** A pitch bowed anew on its string needs a gap, however small. */
    private static List<TakeNote> withGaps(List<TakeNote> notes) {
        TakeNote[] last = new TakeNote[5];
        for (int index = 0; index < notes.size(); index++) {
            TakeNote note = notes.get(index);
            TakeNote before = last[note.string()];
            if (before != null && before.note().equals(note.note()) && note.onSeconds() - before.offSeconds() < 0.018) {
                double off = Math.max(before.onSeconds() + 0.02, note.onSeconds() - 0.02);
                notes.set(notes.indexOf(before), part(before, 0, before.onSeconds(), off, before.velocity()));
            }
            last[note.string()] = notes.get(index);
        }
        return notes;
    }

    private static TakeNote bowed(
            Random random, int string, int above, double at, double length, boolean bowChangesAfter) {
        double on = Math.max(0, at + random.nextGaussian() * 0.004);
        double off = at + length - (bowChangesAfter ? 0.018 + random.nextDouble() * 0.015 : 0.006);
        int velocity = 88 + random.nextInt(9);
        return Playing.takeNote(
                string, Tuning.VIOLIN.open(string).midi() + above, on, Math.max(on + 0.03, off), velocity, false);
    }

    /** Puts about one fault on every sixth note. */
    private static List<Injected> inject(List<TakeNote> notes, Random random) {
        List<Injected> injected = new ArrayList<>();
        notes.sort(Comparator.comparingDouble(TakeNote::onSeconds));
        List<TakeNote> clean = List.copyOf(notes);
        for (int index = 3; index < clean.size() - 3; index += 4 + random.nextInt(5)) {
            TakeNote note = clean.get(index);
            TakeNote next = clean.get(index + 1);
            boolean alone = clean.get(index - 1).offSeconds() < note.onSeconds() + 0.02
                    && note.offSeconds() < next.onSeconds() + 0.02;
            if (!alone || note.seconds() < 0.25) {
                continue;
            }
            Injected fault =
                    switch (FaultKind.values()[random.nextInt(FaultKind.values().length)]) {
                        case SPLIT -> split(notes, note, random);
                        case GHOST -> ghost(notes, note, random);
                        case BLIP -> blip(notes, note, random);
                        case STAIRCASE -> staircase(notes, note, random);
                        case BELOW_OPEN -> stray(notes, note, -1 - random.nextInt(4), FaultKind.BELOW_OPEN);
                        case ABOVE_FINGERBOARD -> stray(notes, note, 33, FaultKind.ABOVE_FINGERBOARD);
                        case HANGING -> hanging(notes, note);
                        case LATE -> late(notes, note, clean.get(index - 1), random);
                    };
            if (fault != null) {
                injected.add(fault);
            }
        }
        return injected;
    }

    private static Injected split(List<TakeNote> notes, TakeNote note, Random random) {
        if (note.seconds() < 0.4) {
            return null;
        }
        double at = note.onSeconds() + note.seconds() * (0.2 + 0.6 * random.nextDouble());
        notes.remove(note);
        notes.add(part(note, 0, note.onSeconds(), at, note.velocity()));
        notes.add(part(note, 0, at, note.offSeconds(), note.velocity() + 5 + random.nextInt(15)));
        return new Injected(FaultKind.SPLIT, note.string(), seconds(at));
    }

    private static Injected ghost(List<TakeNote> notes, TakeNote note, Random random) {
        int string = note.string() == 4 ? 3 : note.string() + 1;
        if (note.note().midi() < Tuning.VIOLIN.open(string).midi()) {
            return null;
        }
        double on = note.onSeconds() + 0.02 + random.nextDouble() * 0.05;
        double off = on + (note.offSeconds() - on) * (0.3 + 0.6 * random.nextDouble());
        notes.add(Playing.takeNote(
                string, note.note().midi(), on, off, note.velocity() - 20 - random.nextInt(25), false));
        return new Injected(FaultKind.GHOST, string, seconds(on));
    }

    private static Injected blip(List<TakeNote> notes, TakeNote note, Random random) {
        int interval = random.nextBoolean() ? 12 : 19;
        double length = 0.02 + random.nextDouble() * 0.03;
        boolean atStart = random.nextBoolean();
        double at = atStart ? note.onSeconds() : note.onSeconds() + note.seconds() / 2;
        notes.remove(note);
        if (!atStart) {
            notes.add(part(note, 0, note.onSeconds(), at, note.velocity()));
        }
        notes.add(part(note, interval, at, at + length, note.velocity()));
        notes.add(part(note, 0, at + length, note.offSeconds(), note.velocity() + (atStart ? 0 : 9)));
        return new Injected(FaultKind.BLIP, note.string(), seconds(at));
    }

    private static Injected staircase(List<TakeNote> notes, TakeNote note, Random random) {
        if (note.seconds() < 0.6) {
            return null;
        }
        int steps = 3 + random.nextInt(4);
        double step = 0.03 + random.nextDouble() * 0.025;
        double at = note.onSeconds() + note.seconds() * 0.4;
        notes.remove(note);
        notes.add(part(note, 0, note.onSeconds(), at, note.velocity()));
        for (int index = 1; index < steps; index++) {
            notes.add(part(note, index, at + (index - 1) * step, at + index * step, note.velocity()));
        }
        notes.add(part(note, steps, at + (steps - 1) * step, note.offSeconds(), note.velocity()));
        return new Injected(FaultKind.STAIRCASE, note.string(), seconds(at));
    }

    private static Injected stray(List<TakeNote> notes, TakeNote note, int above, FaultKind kind) {
        int string = note.string() == 1 ? 2 : 1;
        double at = note.onSeconds() + note.seconds() / 3;
        notes.add(Playing.takeNote(
                string, Tuning.VIOLIN.open(string).midi() + above, at, at + 0.15, note.velocity() - 4, false));
        return new Injected(kind, string, seconds(at));
    }

    private static Injected hanging(List<TakeNote> notes, TakeNote note) {
        boolean goesOn = notes.stream()
                .anyMatch(other -> other.string() == note.string()
                        && other.onSeconds() > note.onSeconds()
                        && other.onSeconds() < note.offSeconds() + 0.05);
        if (!goesOn) {
            return null;
        }
        notes.remove(note);
        notes.add(Playing.takeNote(
                note.string(), note.note().midi(), note.onSeconds(), note.offSeconds() + 9, note.velocity(), true));
        return new Injected(FaultKind.HANGING, note.string(), note.onSeconds());
    }

    private static Injected late(List<TakeNote> notes, TakeNote note, TakeNote before, Random random) {
        double by = 0.09 + random.nextDouble() * 0.08;
        if (note.onSeconds() - before.offSeconds() > 0.06) {
            return null;
        }
        notes.remove(note);
        notes.add(part(note, 0, note.onSeconds() + by, note.offSeconds(), note.velocity() - 15));
        return new Injected(FaultKind.LATE, note.string(), seconds(note.onSeconds() + by));
    }

    private static TakeNote part(TakeNote note, int above, double on, double off, int velocity) {
        return Playing.takeNote(note.string(), note.note().midi() + above, on, off, Math.min(127, velocity), false);
    }

    private static double seconds(double at) {
        return Playing.TICKS.seconds(Playing.TICKS.tick(at));
    }
}
