package rosinbook.level;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Levels of every string on every input, wherever they come from. Readings of the same string, loudness and input are
 * averaged as powers.
 *
 * @param inputOfString input of string 1, of string 2 and so on, from 1, no two alike
 * @param inputs how many inputs there are, 2 to 8
 * @param readings in any order; what is not given is not known
 * @param noiseDb noise of input 1, 2 and so on; empty if unknown
 * @param unit what 0 dB is
 */
public record Levels(
        List<Integer> inputOfString, int inputs, List<LevelReading> readings, List<Double> noiseDb, LevelUnit unit) {
    /** @throws IllegalArgumentException if a string has no input, two share one, or a reading names one that is not there */
    public Levels {
        inputOfString = List.copyOf(inputOfString);
        readings = List.copyOf(readings);
        noiseDb = List.copyOf(noiseDb);
        InputOrder.require(inputOfString, inputs);
        if (!noiseDb.isEmpty() && noiseDb.size() != inputs) {
            throw new IllegalArgumentException(
                    noiseDb.size() + " noise levels for " + inputs + " inputs; give one each, or none");
        }
        for (LevelReading reading : readings) {
            if (reading.string() > inputOfString.size() || reading.input() > inputs) {
                throw new IllegalArgumentException(
                        "a reading for string " + reading.string() + " on input " + reading.input() + ", but there are "
                                + inputOfString.size() + " strings and " + inputs + " inputs");
            }
        }
    }

    /** How many strings there are. */
    public int strings() {
        return inputOfString.size();
    }

    /** Mean power by string, loudness and input, all three from 0; NaN where nothing was read. */
    double[][][] powers() {
        double[][][] sums = new double[strings()][Loudness.values().length][inputs];
        Map<LevelReading, Integer> counts = new HashMap<>();
        for (LevelReading reading : readings) {
            counts.merge(place(reading), 1, Integer::sum);
            sums[reading.string() - 1][reading.loudness().ordinal()][reading.input() - 1] +=
                    Decibels.toPower(reading.decibels());
        }
        for (int string = 0; string < sums.length; string++) {
            for (Loudness loudness : Loudness.values()) {
                for (int input = 0; input < inputs; input++) {
                    int count = counts.getOrDefault(new LevelReading(string + 1, loudness, input + 1, 0), 0);
                    sums[string][loudness.ordinal()][input] =
                            count == 0 ? Double.NaN : sums[string][loudness.ordinal()][input] / count;
                }
            }
        }
        return sums;
    }

    /** Noise power of an input from 0; 0 if unknown. */
    double noisePower(int input) {
        return noiseDb.isEmpty() ? 0 : Decibels.toPower(noiseDb.get(input));
    }

    /** The level of a string, from 1, on its own input; empty if it was not read. */
    public OptionalDouble own(int string, Loudness loudness) {
        double power = powers()[string - 1][loudness.ordinal()][inputOfString.get(string - 1) - 1];
        return Double.isNaN(power) ? OptionalDouble.empty() : OptionalDouble.of(Decibels.ofPower(power));
    }

    private static LevelReading place(LevelReading reading) {
        return new LevelReading(reading.string(), reading.loudness(), reading.input(), 0);
    }
}
