package rosinbook.level;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where nobody plays, and how loud each input is there.
 *
 * @param spans where every input is within 3 dB (if need be 6) of the quietest moment, less a margin at both ends; may be empty
 * @param noisePower mean power of each input there, never below the rounding of the file's format
 */
record QuietParts(List<Span> spans, double[] noisePower) {
    private static final double WINDOW_SECONDS = 0.1;
    private static final double SMOOTHING_SECONDS = 0.05;
    private static final double MARGIN_SECONDS = 0.03;
    private static final double ENOUGH_SECONDS = 0.2;

    /** Tried in this order until there is enough: strings that ring on blur the bound between quiet and sound. */
    private static final double[] WITHIN_DB = {3, 4.5, 6};

    static QuietParts find(Envelope envelope, double floorPower) {
        int window = Math.min(envelope.slices(), envelope.slicesIn(WINDOW_SECONDS));
        double[] quietest = quietestWindow(envelope, window, floorPower);
        List<Span> spans = List.of();
        for (double withinDb : WITHIN_DB) {
            if (spans.stream().mapToInt(Span::length).sum() * envelope.sliceSeconds() < ENOUGH_SECONDS) {
                spans = spans(
                        quiet(envelope, quietest, floorPower, withinDb), envelope.slicesIn(MARGIN_SECONDS), window / 2);
            }
        }
        double[] noise = new double[envelope.inputs()];
        for (int input = 0; input < noise.length; input++) {
            noise[input] = Math.max(floorPower, spans.isEmpty() ? quietest[input] : mean(envelope, input, spans));
        }
        return new QuietParts(spans, noise);
    }

    private static boolean[] quiet(Envelope envelope, double[] quietest, double floorPower, double withinDb) {
        boolean[] quiet = new boolean[envelope.slices()];
        Arrays.fill(quiet, true);
        for (int input = 0; input < envelope.inputs(); input++) {
            double limit = quietest[input] * Decibels.toPower(withinDb);
            double[] smoothed = envelope.smoothedPower(input, envelope.slicesIn(SMOOTHING_SECONDS));
            for (int slice = 0; slice < quiet.length; slice++) {
                quiet[slice] &= smoothed[slice] <= limit;
            }
        }
        for (int slice = 0; slice < quiet.length; slice++) {
            quiet[slice] &= !isDropout(envelope, slice, floorPower, quietest);
        }
        return quiet;
    }

    double seconds(Envelope envelope) {
        return spans.stream().mapToInt(Span::length).sum() * envelope.sliceSeconds();
    }

    /**
     * Every input's power in the window in which all inputs together, in decibels, are lowest. One window for all, because
     * ringing strings can cancel hum on one input for a moment, but hardly on all at once. Windows with digital silence in
     * them (a gate, a gap between files) count only if there are no others.
     */
    private static double[] quietestWindow(Envelope envelope, int window, double floorPower) {
        double[] best = new double[envelope.inputs()];
        Arrays.fill(best, floorPower);
        double least = Double.POSITIVE_INFINITY;
        double[] sums = new double[envelope.inputs()];
        int empty = 0;
        for (int slice = 0; slice < envelope.slices(); slice++) {
            empty += isEmpty(envelope, slice) ? 1 : 0;
            empty -= slice >= window && isEmpty(envelope, slice - window) ? 1 : 0;
            double together = 0;
            for (int input = 0; input < sums.length; input++) {
                sums[input] +=
                        envelope.power(input, slice) - (slice >= window ? envelope.power(input, slice - window) : 0);
                together += Decibels.ofPower(Math.max(floorPower, sums[input] / window));
            }
            if (slice >= window - 1 && empty == 0 && together < least) {
                least = together;
                for (int input = 0; input < sums.length; input++) {
                    best[input] = Math.max(floorPower, sums[input] / window);
                }
            }
        }
        return best;
    }

    /** Whether an input that carries a signal elsewhere has none at all here. */
    private static boolean isEmpty(Envelope envelope, int slice) {
        for (int input = 0; input < envelope.inputs(); input++) {
            if (envelope.isEmpty(input, slice) && envelope.totals(input).peak() > 0) {
                return true;
            }
        }
        return false;
    }

    private static boolean isDropout(Envelope envelope, int slice, double floorPower, double[] quietest) {
        return isEmpty(envelope, slice) && Arrays.stream(quietest).anyMatch(power -> power > floorPower);
    }

    private static List<Span> spans(boolean[] quiet, int margin, int shortest) {
        List<Span> spans = new ArrayList<>();
        int start = -1;
        for (int slice = 0; slice <= quiet.length; slice++) {
            boolean isQuiet = slice < quiet.length && quiet[slice];
            if (isQuiet && start < 0) {
                start = slice;
            }
            if (!isQuiet && start >= 0) {
                int from = start == 0 ? 0 : start + margin;
                int to = slice == quiet.length ? slice : slice - margin;
                if (to - from >= shortest && to > from) {
                    spans.add(new Span(from, to));
                }
                start = -1;
            }
        }
        return spans;
    }

    private static double mean(Envelope envelope, int input, List<Span> spans) {
        double sum = 0;
        int slices = 0;
        for (Span span : spans) {
            sum += envelope.power(input, span.from(), span.to()) * span.length();
            slices += span.length();
        }
        return sum / slices;
    }
}
