package rosinbook.take;

import java.util.List;
import java.util.stream.DoubleStream;

/**
 * A guess at the tempo from the times between starts: the beat whose sixteenths these times meet best, slower and faster halves
 * being told apart only by what is usual. Common practice, no source; a player knows better.
 */
final class TempoEstimate {
    private static final double SLOWEST_BPM = 50;
    private static final double FASTEST_BPM = 180;
    private static final double STEP_BPM = 0.5;
    private static final double USUAL_BPM = 100;
    private static final double USUAL_SPREAD = 0.8;
    private static final double USUAL_WEIGHT = 0.1;
    private static final int LEAST_TIMES = 4;
    private static final int MOST_TIMES = 2000;
    private static final double TOGETHER_SECONDS = 0.05;
    private static final double LONGEST_SECONDS = 4;

    private TempoEstimate() {}

    /** Quarters a minute; 100 if there are too few notes to tell. */
    static double bpm(List<CleanNote> notes) {
        DoubleStream.Builder between = DoubleStream.builder();
        double last = Double.NEGATIVE_INFINITY;
        for (CleanNote clean : notes.subList(0, Math.min(MOST_TIMES, notes.size()))) {
            double start = clean.note().onSeconds();
            if (start - last > TOGETHER_SECONDS) {
                if (start - last < LONGEST_SECONDS) {
                    between.add(start - last);
                }
                last = start;
            }
        }
        double[] times = between.build().toArray();
        if (times.length < LEAST_TIMES) {
            return USUAL_BPM;
        }
        double best = USUAL_BPM;
        double bestFit = Double.NEGATIVE_INFINITY;
        for (double bpm = SLOWEST_BPM; bpm <= FASTEST_BPM; bpm += STEP_BPM) {
            double unusual = Math.log(bpm / USUAL_BPM) / USUAL_SPREAD;
            double fit = fit(times, 15 / bpm) - USUAL_WEIGHT * unusual * unusual;
            if (fit > bestFit) {
                bestFit = fit;
                best = bpm;
            }
        }
        return best;
    }

    /** How near the times come to whole sixteenths: 1 on the dot, 0 on average for none. */
    private static double fit(double[] times, double sixteenthSeconds) {
        double error = 0;
        for (double time : times) {
            double sixteenths = time / sixteenthSeconds;
            error += Math.abs(sixteenths - Math.max(1, Math.rint(sixteenths)));
        }
        return 1 - 4 * error / times.length;
    }
}
