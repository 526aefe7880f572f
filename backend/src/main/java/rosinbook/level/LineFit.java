package rosinbook.level;

import java.util.List;

/**
 * A straight line through points by least squares.
 *
 * @param slope change of y per x
 * @param intercept y where x is 0
 * @param rSquared the share of the scatter that the line explains, 0 to 1; 1 if all points have the same y
 * @param residual typical distance of a point from the line, √(Σ squares ÷ (n − 2)), in y; 0 for two points, which any line fits
 * @param points how many there were
 * @see "NIST/SEMATECH e-Handbook of Statistical Methods, 4.1.4.1 linear least squares"
 */
public record LineFit(double slope, double intercept, double rSquared, double residual, int points) {
    /**
     * One point.
     *
     * @param x finite
     * @param y finite
     */
    public record Point(double x, double y) {
        /** @throws IllegalArgumentException if a coordinate is not finite */
        public Point {
            if (!Double.isFinite(x) || !Double.isFinite(y)) {
                throw new IllegalArgumentException("a point at " + x + ", " + y + "; give finite numbers");
            }
        }
    }

    /** @throws IllegalArgumentException if there are fewer than two different x */
    public static LineFit of(List<Point> points) {
        double meanX = points.stream().mapToDouble(Point::x).average().orElse(0);
        double meanY = points.stream().mapToDouble(Point::y).average().orElse(0);
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (Point point : points) {
            xx += (point.x() - meanX) * (point.x() - meanX);
            xy += (point.x() - meanX) * (point.y() - meanY);
            yy += (point.y() - meanY) * (point.y() - meanY);
        }
        if (!(xx > 0)) {
            throw new IllegalArgumentException("a line needs readings at two different settings; " + points.size()
                    + " readings at one were given");
        }
        double slope = xy / xx;
        double intercept = meanY - slope * meanX;
        double left = 0;
        for (Point point : points) {
            double miss = point.y() - (intercept + slope * point.x());
            left += miss * miss;
        }
        int n = points.size();
        double residual = n > 2 ? Math.sqrt(left / (n - 2)) : 0;
        return new LineFit(slope, intercept, yy > 0 ? Math.max(0, 1 - left / yy) : 1, residual, n);
    }
}
