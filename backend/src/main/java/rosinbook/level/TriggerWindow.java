package rosinbook.level;

import java.util.ArrayList;
import java.util.List;

/**
 * Where a trigger threshold for one string may lie: above everything it must ignore, below everything it must catch.
 *
 * @param string 1 = highest
 * @param lowDbfs the loudest thing to ignore plus the margin
 * @param highDbfs the softest own stroke less the margin
 * @param widthDb high less low; 0 or less means there is no window
 * @param softestStrokeDbfs the softest own stroke
 * @param loudestLeakDbfs the loudest thing to ignore: a neighbour's leak, or the noise where that is louder
 * @param leakFromString the string it comes from; 0 for noise; null for a neighbour that is not known
 * @param marginDb what was added and taken off
 * @param advice null if there is a window; otherwise what is wrong and what usually helps
 */
public record TriggerWindow(
        int string,
        double lowDbfs,
        double highDbfs,
        double widthDb,
        double softestStrokeDbfs,
        double loudestLeakDbfs,
        Integer leakFromString,
        double marginDb,
        String advice) {
    /** Customary room on either side of a trigger threshold, in dB (common practice, no source). */
    public static final double USUAL_MARGIN_DB = 3;

    /** Whether a threshold fits at all. */
    public boolean isOpen() {
        return widthDb > 0;
    }

    /** The middle of the window, where the room on both sides is the same; also where there is no window. */
    public double middleDbfs() {
        return (lowDbfs + highDbfs) / 2;
    }

    /** One window per string that was bowed; strings that were not are left out. */
    public static List<TriggerWindow> of(Levels levels, double marginDb) {
        double[][][] powers = levels.powers();
        List<TriggerWindow> windows = new ArrayList<>();
        for (int string = 0; string < levels.strings(); string++) {
            int input = levels.inputOfString().get(string) - 1;
            double softest = Double.POSITIVE_INFINITY;
            for (double[] byInput : powers[string]) {
                softest = byInput[input] < softest ? byInput[input] : softest;
            }
            Ignored ignored = loudestToIgnore(powers, string, input, levels.noisePower(input));
            if (softest < Double.POSITIVE_INFINITY && ignored.power() > 0) {
                windows.add(between(string + 1, Decibels.ofPower(softest), ignored, marginDb));
            }
        }
        return List.copyOf(windows);
    }

    /** The window between the softest own stroke and what must be ignored, both in dB. */
    static TriggerWindow between(int string, double softestDb, Ignored ignored, double marginDb) {
        double leakDb = Decibels.ofPower(ignored.power());
        double low = leakDb + marginDb;
        double high = softestDb - marginDb;
        String advice = high > low ? null : advice(string, softestDb, leakDb, ignored.fromString(), marginDb);
        return new TriggerWindow(
                string, low, high, high - low, softestDb, leakDb, ignored.fromString(), marginDb, advice);
    }

    /** The loudest thing a trigger must ignore, and where it comes from; see {@link #leakFromString}. */
    record Ignored(double power, Integer fromString) {}

    private static Ignored loudestToIgnore(double[][][] powers, int string, int input, double noise) {
        Ignored loudest = new Ignored(noise, 0);
        for (int other = 0; other < powers.length; other++) {
            for (double[] byInput : powers[other]) {
                if (other != string && byInput[input] > loudest.power()) {
                    boolean isMostlyNoise = byInput[input] < 2 * noise;
                    loudest = new Ignored(byInput[input], isMostlyNoise ? 0 : other + 1);
                }
            }
        }
        return loudest;
    }

    private static String advice(int string, double softestDb, double leakDb, Integer from, double marginDb) {
        boolean isNoise = from != null && from == 0;
        String source = isNoise ? "the noise" : from == null ? "a neighbour" : "string " + from;
        String found = Words.say(
                "String %d has no window: its softest stroke is %.1f dB, and %s reaches %.1f dB on its input (with %.1f dB of"
                        + " room on either side). ",
                string, softestDb, source, leakDb, marginDb);
        if (isNoise) {
            return found
                    + "What usually helps: find the hum or hiss first (cable, ground, mains gear nearby), then try the"
                    + " preamp route.";
        }
        return found + "What usually helps: seat the pickup of string " + string + " firmly, lower the trim of "
                + (from == null ? "its neighbours" : source)
                + ", try the other route (straight or preamp), damp what rings along.";
    }
}
