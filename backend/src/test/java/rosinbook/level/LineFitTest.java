package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against Commons Math 3.6.1. */
class LineFitTest {
    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 10, 200})
    void the_line_agrees_with_another_library(int count) {
        Random random = new Random(count);
        List<LineFit.Point> points = IntStream.range(0, count)
                .mapToObj(i -> new LineFit.Point(5 * i, -50 + 1.5 * i + random.nextGaussian()))
                .toList();
        SimpleRegression expected = new SimpleRegression();
        points.forEach(point -> expected.addData(point.x(), point.y()));
        LineFit fit = LineFit.of(points);
        assertEquals(expected.getSlope(), fit.slope(), 1e-9);
        assertEquals(expected.getIntercept(), fit.intercept(), 1e-9);
        assertEquals(expected.getRSquare(), fit.rSquared(), 1e-9);
        if (count > 2) {
            assertEquals(Math.sqrt(expected.getMeanSquareError()), fit.residual(), 1e-9);
        }
    }

    @Test
    void readings_at_one_setting_make_no_line() {
        var problem = assertThrows(
                IllegalArgumentException.class,
                () -> LineFit.of(List.of(new LineFit.Point(20, -40), new LineFit.Point(20, -39))));
        assertTrue(problem.getMessage().contains("two different settings"), problem.getMessage());
    }

    @Test
    void a_point_that_is_no_number_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> new LineFit.Point(1, Double.NaN));
    }
}
