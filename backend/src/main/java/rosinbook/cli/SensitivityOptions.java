package rosinbook.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Option;
import rosinbook.level.LineFit;
import rosinbook.level.SensitivityScale;

/** The synth's scale for sensitivity, as told on the command line. */
final class SensitivityOptions {
    @Option(
            names = "--scale",
            split = ",",
            arity = "1",
            required = true,
            paramLabel = "NUMBER",
            description = "Lowest and highest setting, and the step if it is not 1: 0,100 or 1,9,0.5.")
    private List<Double> scale;

    @Option(
            names = "--start",
            required = true,
            paramLabel = "SETTING",
            description = "Where players customarily begin.")
    private double start;

    @Option(
            names = "--step-db",
            paramLabel = "DB",
            description = "Decibels per step, assumed; 1 unless told otherwise or measured.")
    private double stepDb = 1;

    @Option(
            names = "--step-readings",
            split = ",",
            paramLabel = "SETTING=DB",
            description = "Level shown at two or more settings for the same stroke, to measure the decibels per step.")
    private Map<Double, Double> stepReadings = Map.of();

    @Option(
            names = "--threshold",
            paramLabel = "DBFS",
            description = "The level in this recording that just triggers at the customary start, if it is known.")
    Double thresholdDbfs;

    SensitivityScale scale() {
        if (scale.size() < 2 || scale.size() > 3) {
            throw new IllegalArgumentException(
                    "--scale takes the lowest and the highest setting and perhaps the step, not " + scale.size()
                            + " numbers");
        }
        double step = scale.size() == 3 ? scale.get(2) : 1;
        if (stepReadings.isEmpty()) {
            return SensitivityScale.assumed(scale.get(0), scale.get(1), step, stepDb, start);
        }
        List<LineFit.Point> points = new ArrayList<>();
        stepReadings.forEach((setting, level) -> points.add(new LineFit.Point(setting, level)));
        return SensitivityScale.measured(scale.get(0), scale.get(1), step, points, start);
    }
}
