package rosinbook.level;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * How much of a bowed string reaches the other inputs, against its own input. Every table has a row per string bowed and a
 * column per input heard, both from 1; a string's own input reads 0; null means that it was not measured.
 *
 * <p>Noise is taken off as power. An entry whose leak is less than 6 dB above the noise is not marked as above it: take it
 * as "no more than about this".
 *
 * @param db all loudnesses together, as powers
 * @param aboveNoise where the leak, at some loudness, is 6 dB or more above the noise of its input
 * @param byLoudness the same for soft, medium and loud alone; entries that differ by loudness show a leak that is not linear
 * @see "Metzler, Audio Measurement Handbook: crosstalk = 20·log10(undriven rms ÷ driven rms)"
 */
public record Crosstalk(List<List<Double>> db, List<List<Boolean>> aboveNoise, Map<Loudness, Table> byLoudness) {
    private static final double ABOVE_NOISE = Decibels.toPower(6);
    /** Less than this share of the noise power (−9 dB) cannot be told from none. */
    private static final double LEAST_SHARE = Decibels.toPower(-9);

    /** One loudness alone. */
    public record Table(List<List<Double>> db, List<List<Boolean>> aboveNoise) {}

    /** Compares every reading with the string's own input at the same loudness. */
    public static Crosstalk of(Levels levels) {
        Table all = table(levels, EnumSet.allOf(Loudness.class));
        Map<Loudness, Table> byLoudness = new EnumMap<>(Loudness.class);
        for (Loudness loudness : Loudness.values()) {
            byLoudness.put(loudness, table(levels, EnumSet.of(loudness)));
        }
        return new Crosstalk(all.db(), all.aboveNoise(), Collections.unmodifiableMap(byLoudness));
    }

    private static Table table(Levels levels, Set<Loudness> loudnesses) {
        double[][][] powers = levels.powers();
        List<List<Double>> db = new ArrayList<>();
        List<List<Boolean>> above = new ArrayList<>();
        for (int string = 0; string < levels.strings(); string++) {
            List<Double> row = new ArrayList<>();
            List<Boolean> marks = new ArrayList<>();
            for (int input = 0; input < levels.inputs(); input++) {
                Leak leak = leak(levels, powers[string], levels.inputOfString().get(string) - 1, input, loudnesses);
                row.add(leak == null ? null : leak.db());
                marks.add(leak == null ? null : leak.isAboveNoise());
            }
            db.add(Collections.unmodifiableList(row));
            above.add(Collections.unmodifiableList(marks));
        }
        return new Table(List.copyOf(db), List.copyOf(above));
    }

    private record Leak(double db, boolean isAboveNoise) {}

    private static Leak leak(Levels levels, double[][] powers, int own, int input, Set<Loudness> loudnesses) {
        double signal = 0;
        double heard = 0;
        double hidden = 0;
        boolean isAbove = false;
        double noise = levels.noisePower(input);
        for (Loudness loudness : loudnesses) {
            double ownPower = powers[loudness.ordinal()][own] - levels.noisePower(own);
            double power = powers[loudness.ordinal()][input];
            if (Double.isNaN(power) || !(ownPower > 0)) {
                continue;
            }
            signal += ownPower;
            heard += power - noise;
            hidden += LEAST_SHARE * noise;
            isAbove |= power - noise >= ABOVE_NOISE * noise;
        }
        if (signal == 0) {
            return null;
        }
        if (input == own) {
            return new Leak(0, true);
        }
        // Powers of 0 happen where noise is unknown and a reading is absurdly low; one in 1e30 stands for "none".
        return new Leak(Decibels.ofPower(Math.max(Math.max(heard, hidden) / signal, 1e-30)), isAbove);
    }
}
