package rosinbook.level;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Sorts the strokes of one string into soft, medium and loud. Three strokes are taken in order of level; more are parted
 * where the squared distances from the class means add up to the least; two are soft and loud; a single one is medium.
 *
 * @see "Fisher, On grouping for maximum homogeneity, J. Am. Stat. Assoc. 53 (1958)"
 */
final class LoudnessClasses {
    private LoudnessClasses() {}

    /** @param decibels one level per stroke, in any order */
    static List<Loudness> of(List<Double> decibels) {
        List<Integer> order = IntStream.range(0, decibels.size())
                .boxed()
                .sorted(Comparator.comparingDouble(decibels::get))
                .toList();
        double[] sorted = order.stream().mapToDouble(decibels::get).toArray();
        int[] bounds = bounds(sorted);
        List<Loudness> classes =
                new ArrayList<>(decibels.stream().map(level -> Loudness.MEDIUM).toList());
        for (int rank = 0; rank < sorted.length; rank++) {
            classes.set(
                    order.get(rank),
                    rank < bounds[0] ? Loudness.SOFT : rank < bounds[1] ? Loudness.MEDIUM : Loudness.LOUD);
        }
        return classes;
    }

    /** The rank of the first medium and of the first loud stroke. */
    private static int[] bounds(double[] sorted) {
        int n = sorted.length;
        if (n < 3) {
            return n == 2 ? new int[] {1, 1} : new int[] {0, 1};
        }
        double[] sum = new double[n + 1];
        double[] squares = new double[n + 1];
        for (int i = 0; i < n; i++) {
            sum[i + 1] = sum[i] + sorted[i];
            squares[i + 1] = squares[i] + sorted[i] * sorted[i];
        }
        int[] best = {1, 2};
        double least = Double.POSITIVE_INFINITY;
        for (int medium = 1; medium < n - 1; medium++) {
            for (int loud = medium + 1; loud < n; loud++) {
                double scatter = scatter(sum, squares, 0, medium)
                        + scatter(sum, squares, medium, loud)
                        + scatter(sum, squares, loud, n);
                if (scatter < least) {
                    least = scatter;
                    best = new int[] {medium, loud};
                }
            }
        }
        return best;
    }

    private static double scatter(double[] sum, double[] squares, int from, int to) {
        double total = sum[to] - sum[from];
        return squares[to] - squares[from] - total * total / (to - from);
    }
}
