package rosinbook.level;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Finds where the bow is on a string. On every slice the input that stands highest above its own noise power is heard as the
 * one that is played; its curve is cut at pauses and at changes of that input.
 *
 * <p>A pause is a valley {@value #VALLEY_DB} dB below the lower of its two neighbours, or one that reaches the noise. A
 * stroke goes from where it comes within {@value #EDGE_DB} dB of its own level to where it leaves that range.
 */
final class StrokeFinder {
    private static final double SMOOTHING_SECONDS = 0.03;
    private static final double SHORTEST_SECONDS = 0.12;
    private static final double FLICKER_SECONDS = 0.06;
    private static final double VALLEY_DB = 15;
    private static final double NOISE_VALLEY_DB = 8;
    private static final double NEAR_NOISE_DB = 6;
    private static final double EDGE_DB = 20;
    private static final double LEAST_ABOVE_NOISE_DB = 10;
    private static final double LEAST_BELOW_LOUDEST_DB = 35;

    private final Envelope envelope;
    private final double[] noise;
    private final int[] leader;
    private final double[] decibels;

    private StrokeFinder(Envelope envelope, double[] noise, List<Integer> inputs) {
        this.envelope = envelope;
        this.noise = noise;
        leader = new int[envelope.slices()];
        decibels = new double[envelope.slices()];
        double[] leading = new double[envelope.slices()];
        for (int input : inputs) {
            double[] smoothed = envelope.smoothedPower(input, envelope.slicesIn(SMOOTHING_SECONDS));
            for (int slice = 0; slice < smoothed.length; slice++) {
                double excess = smoothed[slice] - noise[input];
                if (excess > leading[slice]) {
                    leading[slice] = excess;
                    leader[slice] = input;
                    decibels[slice] = Math.max(0, Decibels.ofPower(smoothed[slice] / noise[input]));
                }
            }
        }
    }

    /** @param inputs the inputs, from 0, that have a string of their own */
    static List<Stroke> find(Envelope envelope, double[] noise, List<Integer> inputs) {
        StrokeFinder finder = new StrokeFinder(envelope, noise, inputs);
        List<Stroke> strokes = new ArrayList<>();
        for (Span run : finder.runsOfOneLeader()) {
            for (Span piece : finder.cutAtPauses(run)) {
                finder.addIfStroke(piece, strokes);
            }
        }
        return withoutRemnants(envelope, strokes);
    }

    /** Stretches with one leader; a lead shorter than a flicker is left to the one before it. */
    private List<Span> runsOfOneLeader() {
        int flicker = envelope.slicesIn(FLICKER_SECONDS);
        List<Span> runs = new ArrayList<>();
        int start = -1;
        int slice = 0;
        while (slice < leader.length) {
            if (decibels[slice] <= 0) {
                start = close(runs, start, slice);
                slice++;
                continue;
            }
            int end = endOfLead(slice);
            boolean changes = start < 0 || leader[slice] != leader[start];
            if (changes && start >= 0 && end - slice < flicker && end < leader.length && leader[end] == leader[start]) {
                Arrays.fill(leader, slice, end, leader[start]);
            } else if (changes) {
                close(runs, start, slice);
                start = slice;
            }
            slice = end;
        }
        close(runs, start, leader.length);
        return runs;
    }

    private int endOfLead(int from) {
        int end = from;
        while (end < leader.length && leader[end] == leader[from] && decibels[end] > 0) {
            end++;
        }
        return end;
    }

    private static int close(List<Span> runs, int start, int end) {
        if (start >= 0 && end > start) {
            runs.add(new Span(start, end));
        }
        return -1;
    }

    /** One walk along the curve: a valley counts once the curve has climbed far enough out of it. */
    private List<Span> cutAtPauses(Span run) {
        List<Span> pieces = new ArrayList<>();
        int start = run.from();
        double highest = 0;
        int lowestAt = run.from();
        for (int slice = run.from(); slice < run.to(); slice++) {
            double here = decibels[slice];
            double lowest = decibels[lowestAt];
            if (here < lowest) {
                lowestAt = slice;
            }
            double depth = Math.min(highest, here) - decibels[lowestAt];
            double needed = decibels[lowestAt] <= NEAR_NOISE_DB ? NOISE_VALLEY_DB : VALLEY_DB;
            if (depth >= needed) {
                pieces.add(new Span(start, lowestAt + 1));
                start = lowestAt + 1;
                highest = here;
                lowestAt = slice;
            }
            if (here >= highest) {
                highest = here;
                lowestAt = slice;
            }
        }
        pieces.add(new Span(start, run.to()));
        return pieces;
    }

    private void addIfStroke(Span piece, List<Stroke> strokes) {
        if (piece.length() < 1) {
            return;
        }
        int input = leader[piece.from()];
        double level = Decibels.ofPower(envelope.power(input, piece.from(), piece.to()) / noise[input]);
        Span body = within(piece, Math.max(NEAR_NOISE_DB, level - EDGE_DB));
        if (body == null) {
            return;
        }
        Stroke stroke = Stroke.of(envelope, body, input);
        double steady =
                envelope.power(input, stroke.steady().from(), stroke.steady().to()) / noise[input];
        if (body.length() * envelope.sliceSeconds() >= SHORTEST_SECONDS - 1e-9
                && Decibels.ofPower(steady) >= LEAST_ABOVE_NOISE_DB) {
            strokes.add(stroke);
        }
    }

    private Span within(Span piece, double threshold) {
        int from = piece.from();
        while (from < piece.to() && decibels[from] < threshold) {
            from++;
        }
        int to = piece.to();
        while (to > from && decibels[to - 1] < threshold) {
            to--;
        }
        return from < to ? new Span(from, to) : null;
    }

    /** Drops what is far weaker than the loudest stroke on its input: strings that ring on, a hand on the instrument. */
    private static List<Stroke> withoutRemnants(Envelope envelope, List<Stroke> strokes) {
        double[] loudest = new double[envelope.inputs()];
        for (Stroke stroke : strokes) {
            loudest[stroke.input()] = Math.max(loudest[stroke.input()], steadyPower(envelope, stroke));
        }
        List<Stroke> kept = new ArrayList<>();
        for (Stroke stroke : strokes) {
            if (steadyPower(envelope, stroke) >= loudest[stroke.input()] * Decibels.toPower(-LEAST_BELOW_LOUDEST_DB)) {
                kept.add(stroke);
            }
        }
        kept.sort(Comparator.comparingInt(stroke -> stroke.span().from()));
        return kept;
    }

    private static double steadyPower(Envelope envelope, Stroke stroke) {
        return envelope.power(
                stroke.input(), stroke.steady().from(), stroke.steady().to());
    }
}
