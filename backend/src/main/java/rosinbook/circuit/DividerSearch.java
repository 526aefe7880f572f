package rosinbook.circuit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Finds the best pairs for a goal by looking at every pair of the series over five decades (10 Ω to just below 1 MΩ).
 *
 * <p>Best is the smallest error of the loaded nominal output. Errors within 1e-12 of the supply count as equal; among
 * equals the lower Thevenin resistance wins, because the next load moves it least. A pair that breaks the current
 * budget or a power rating is never chosen.
 */
public final class DividerSearch {
    private static final double EQUAL_SHARE = 1e-12;
    private static final Comparator<Pair> BEST_FIRST = Comparator.comparingLong(Pair::errorRank)
            .thenComparingDouble(Pair::theveninOhms)
            .thenComparingDouble(Pair::lowerOhms);

    private DividerSearch() {}

    /**
     * The best pairs, best first.
     *
     * @param count how many at most, 1 to 100
     * @return at least one pair
     * @throws ImpossibleDividerException when no two resistors, of whatever values, can do it within the limits
     * @throws IllegalArgumentException starting with {@code count}
     */
    public static List<DividerChoice> rank(DividerGoal goal, int count) throws ImpossibleDividerException {
        Require.within("count", count, 1, 100, "a number");
        List<Pair> pairs = search(goal, count);
        DividerChoice nearest = pairs.isEmpty()
                ? null
                : DividerChoice.of(goal, pairs.get(0).upperOhms(), pairs.get(0).lowerOhms());
        var reason = DividerLimits.reasonAgainst(goal);
        if (reason.isPresent() || nearest == null) {
            throw new ImpossibleDividerException(
                    reason.orElse("no two values of " + goal.series() + " keep the current budget and the power rating;"
                                    + " raise one of them or take a finer series")
                            + describe(nearest),
                    nearest);
        }
        return pairs.stream()
                .map(pair -> DividerChoice.of(goal, pair.upperOhms(), pair.lowerOhms()))
                .toList();
    }

    private static List<Pair> search(DividerGoal goal, int count) {
        double[] ohms = goal.series().ohms();
        double supply = Math.abs(goal.supplyVolts());
        double target = goal.targetVolts() * Math.signum(goal.supplyVolts());
        double maxAmps = goal.maxMilliamps() / 1000 * (1 + EQUAL_SHARE);
        double maxWatts = goal.allowedMilliwatts() / 1000 * (1 + EQUAL_SHARE);
        var kept = new PriorityQueue<>(BEST_FIRST.reversed());
        double worstKept = Double.POSITIVE_INFINITY;
        for (double lower : ohms) {
            double loaded = goal.loaded(lower);
            double open = supply * loaded;
            for (double upper : ohms) {
                double volts = open / (upper + loaded);
                double error = Math.abs(volts - target);
                if (error > worstKept) {
                    continue;
                }
                double amps = (supply - volts) / upper;
                if (amps > maxAmps || amps * (supply - volts) > maxWatts || volts * volts > maxWatts * lower) {
                    continue;
                }
                long rank = Math.round(error / (supply * EQUAL_SHARE));
                kept.add(new Pair(rank, upper * lower / (upper + lower), upper, lower));
                if (kept.size() > count) {
                    kept.poll();
                    worstKept = (kept.peek().errorRank() + 1) * supply * EQUAL_SHARE;
                }
            }
        }
        List<Pair> pairs = new ArrayList<>(kept);
        pairs.sort(BEST_FIRST);
        return pairs;
    }

    private static String describe(DividerChoice nearest) {
        if (nearest == null) {
            return "";
        }
        return ". The nearest pair within the limits, " + Figures.ohms(nearest.upperOhms()) + " over "
                + Figures.ohms(nearest.lowerOhms()) + ", gives " + Figures.volts(nearest.volts()) + " at "
                + Figures.plain(nearest.milliamps()) + " mA";
    }

    private record Pair(long errorRank, double theveninOhms, double upperOhms, double lowerOhms) {}
}
