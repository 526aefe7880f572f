package rosinbook.take;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;

/** A figure for every {@link Threshold}. Immutable. */
public final class Thresholds {
    /** The standard figures. */
    public static final Thresholds STANDARD = new Thresholds(standard());

    private final double[] figures;

    private Thresholds(double[] figures) {
        this.figures = figures;
    }

    /**
     * The standard figures with some moved.
     *
     * @throws IllegalArgumentException if a figure is out of its threshold's range
     */
    public static Thresholds of(Map<Threshold, Double> moved) {
        Thresholds thresholds = STANDARD;
        for (Map.Entry<Threshold, Double> entry : moved.entrySet()) {
            thresholds = thresholds.with(entry.getKey(), entry.getValue());
        }
        return thresholds;
    }

    /** The figure of one threshold, in its unit. */
    public double get(Threshold threshold) {
        return figures[threshold.ordinal()];
    }

    /**
     * These figures with one moved.
     *
     * @throws IllegalArgumentException if it is out of the threshold's range
     */
    public Thresholds with(Threshold threshold, double figure) {
        if (!(figure >= threshold.least() && figure <= threshold.most())) {
            throw new IllegalArgumentException(
                    threshold + " is " + figure + "; give " + threshold.least() + " to " + threshold.most());
        }
        double[] moved = figures.clone();
        moved[threshold.ordinal()] = figure;
        return new Thresholds(moved);
    }

    /**
     * These figures for playing that many times slower: everything measured in seconds is multiplied, beyond its range if need
     * be.
     *
     * @param factor above 0
     */
    public Thresholds stretched(double factor) {
        if (!(factor > 0) || !Double.isFinite(factor)) {
            throw new IllegalArgumentException("factor is " + factor + "; give a number above 0");
        }
        double[] stretched = figures.clone();
        for (Threshold threshold : Threshold.values()) {
            if (threshold.unit() == Threshold.Unit.SECONDS) {
                stretched[threshold.ordinal()] = Stroke.between(0, stretched[threshold.ordinal()] * factor);
            }
        }
        return new Thresholds(stretched);
    }

    /** Every threshold with its figure, in the order of {@link Threshold}. */
    public Map<Threshold, Double> toMap() {
        Map<Threshold, Double> map = new EnumMap<>(Threshold.class);
        for (Threshold threshold : Threshold.values()) {
            map.put(threshold, get(threshold));
        }
        return map;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Thresholds that && Arrays.equals(figures, that.figures);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(figures);
    }

    @Override
    public String toString() {
        return toMap().toString();
    }

    private static double[] standard() {
        return Arrays.stream(Threshold.values())
                .mapToDouble(Threshold::standard)
                .toArray();
    }
}
