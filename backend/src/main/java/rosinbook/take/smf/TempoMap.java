package rosinbook.take.smf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Turns ticks into seconds and back. Immutable.
 *
 * <p>Without a tempo event the tempo is 120 quarters a minute (Standard MIDI Files 1.0, "Set Tempo"). Under SMPTE division tempo
 * events count for nothing.
 */
public final class TempoMap {
    private static final int DEFAULT_MICROS_PER_QUARTER = 500_000;

    /**
     * A tempo that holds from a tick on.
     *
     * @param tick from the start of the file, 0 or above
     * @param microsPerQuarter 1 to 16 777 215
     */
    public record Change(long tick, int microsPerQuarter) {
        /** @throws IllegalArgumentException if a figure is out of range */
        public Change {
            if (tick < 0 || microsPerQuarter < 1 || microsPerQuarter > 0xFFFFFF) {
                throw new IllegalArgumentException(
                        "tempo of " + microsPerQuarter + " µs at tick " + tick + "; give 1 to 16777215 from tick 0 on");
            }
        }
    }

    private final Division division;
    private final List<Change> changes;
    private final long[] startTicks;
    private final double[] startSeconds;
    private final double[] secondsPerTick;

    private TempoMap(Division division, List<Change> changes) {
        this.division = division;
        this.changes = changes;
        int pieces = division instanceof Division.Metrical ? changes.size() : 1;
        startTicks = new long[pieces];
        startSeconds = new double[pieces];
        secondsPerTick = new double[pieces];
        for (int piece = 0; piece < pieces; piece++) {
            startTicks[piece] = changes.get(piece).tick();
            secondsPerTick[piece] = secondsPerTick(changes.get(piece).microsPerQuarter());
            if (piece > 0) {
                startSeconds[piece] = startSeconds[piece - 1]
                        + (startTicks[piece] - startTicks[piece - 1]) * secondsPerTick[piece - 1];
            }
        }
    }

    /**
     * A map from tempo changes in any order; of several at one tick the last given holds.
     *
     * @param division what a tick means
     * @param changes may be empty
     */
    public static TempoMap of(Division division, List<Change> changes) {
        List<Change> sorted = new ArrayList<>(changes);
        sorted.sort(Comparator.comparingLong(Change::tick));
        List<Change> kept = new ArrayList<>();
        if (sorted.isEmpty() || sorted.get(0).tick() > 0) {
            kept.add(new Change(0, DEFAULT_MICROS_PER_QUARTER));
        }
        for (Change change : sorted) {
            if (!kept.isEmpty() && kept.get(kept.size() - 1).tick() == change.tick()) {
                kept.remove(kept.size() - 1);
            }
            kept.add(change);
        }
        return new TempoMap(division, List.copyOf(kept));
    }

    /** What a tick means. */
    public Division division() {
        return division;
    }

    /** The tempo from tick 0 on and every change, in order; never empty. */
    public List<Change> changes() {
        return changes;
    }

    /** Seconds from the start of the file. */
    public double seconds(long tick) {
        int piece = Arrays.binarySearch(startTicks, tick);
        int index = piece >= 0 ? piece : -piece - 2;
        return startSeconds[index] + (tick - startTicks[index]) * secondsPerTick[index];
    }

    /** The tick nearest to a moment, 0 or above. */
    public long tick(double seconds) {
        int piece = Arrays.binarySearch(startSeconds, Math.max(0, seconds));
        int index = piece >= 0 ? piece : -piece - 2;
        return startTicks[index] + Math.round((Math.max(0, seconds) - startSeconds[index]) / secondsPerTick[index]);
    }

    private double secondsPerTick(int microsPerQuarter) {
        if (division instanceof Division.Smpte smpte) {
            return 1 / smpte.ticksPerSecond();
        }
        return microsPerQuarter / 1e6 / ((Division.Metrical) division).ticksPerQuarter();
    }
}
