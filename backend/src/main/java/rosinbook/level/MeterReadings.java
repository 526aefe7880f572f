package rosinbook.level;

import java.util.List;

/** Turns what a meter showed into levels. */
public final class MeterReadings {
    private MeterReadings() {}

    /** Readings in decibels. */
    public static Levels inDecibels(
            List<LevelReading> readings, List<Integer> inputOfString, int inputs, List<Double> noiseDb) {
        return new Levels(inputOfString, inputs, readings, noiseDb, LevelUnit.METER_DB);
    }

    /**
     * Readings in steps of the meter's own scale.
     *
     * @param readings their {@code decibels} hold the figure on the meter
     * @param noise the meter with all strings damped, per input; empty if not read
     * @param decibelsPerUnit what one unit of the meter is worth, above 0; measure it with {@link LineFit}
     * @throws IllegalArgumentException if {@code decibelsPerUnit} is not above 0
     */
    public static Levels inUnits(
            List<LevelReading> readings,
            List<Integer> inputOfString,
            int inputs,
            List<Double> noise,
            double decibelsPerUnit) {
        if (!(decibelsPerUnit > 0 && Double.isFinite(decibelsPerUnit))) {
            throw new IllegalArgumentException("a meter unit of " + decibelsPerUnit + " dB; give decibels above 0");
        }
        List<LevelReading> scaled = readings.stream()
                .map(reading -> new LevelReading(
                        reading.string(), reading.loudness(), reading.input(), reading.decibels() * decibelsPerUnit))
                .toList();
        List<Double> scaledNoise =
                noise.stream().map(units -> units * decibelsPerUnit).toList();
        return new Levels(inputOfString, inputs, scaled, scaledNoise, LevelUnit.METER_DB);
    }
}
