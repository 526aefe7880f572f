package rosinbook.level;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Two measurements side by side. Every difference is the second less the first, in dB; null where one of the two lacks it.
 *
 * @param strings one per string that both have
 * @param sentence which is better for what
 */
public record LevelComparison(List<StringDifference> strings, String sentence) {
    /** Less than this is not worth a word, in dB (common practice, no source). */
    private static final double WORTH_A_WORD_DB = 1;

    /**
     * One string, second less first.
     *
     * @param noiseDb change of its input's noise
     * @param humDb change of its hum
     * @param levelDb change of its medium strokes (or whichever loudness both have)
     * @param signalToNoiseDb change of the distance between the two
     * @param windowDb change of the width of its trigger window
     * @param tiltDbPerOctave change of the tilt of its spectrum; above 0 means brighter
     */
    public record StringDifference(
            int string,
            Double noiseDb,
            Double humDb,
            Double levelDb,
            Double signalToNoiseDb,
            Double windowDb,
            Double tiltDbPerOctave) {}

    /**
     * @param first what the first is called, "straight" or "before"
     * @param second what the second is called
     */
    public static LevelComparison of(LevelMeasurement a, String first, LevelMeasurement b, String second) {
        List<StringDifference> differences = new ArrayList<>();
        int strings = Math.min(a.levels().strings(), b.levels().strings());
        for (int string = 1; string <= strings; string++) {
            differences.add(difference(a, b, string));
        }
        return new LevelComparison(List.copyOf(differences), sentence(differences, first, second));
    }

    private static StringDifference difference(LevelMeasurement a, LevelMeasurement b, int string) {
        InputReport was = input(a, string);
        InputReport now = input(b, string);
        return new StringDifference(
                string,
                minus(now == null ? null : now.noiseDbfs(), was == null ? null : was.noiseDbfs()),
                minus(now == null ? null : now.humDbfs(), was == null ? null : was.humDbfs()),
                level(a.levels(), b.levels(), string),
                minus(now == null ? null : now.signalToNoiseDb(), was == null ? null : was.signalToNoiseDb()),
                minus(width(b, string), width(a, string)),
                minus(now == null ? null : now.tiltDbPerOctave(), was == null ? null : was.tiltDbPerOctave()));
    }

    private static InputReport input(LevelMeasurement measurement, int string) {
        int input = measurement.levels().inputOfString().get(string - 1);
        return measurement.inputs().stream()
                .filter(report -> report.input() == input)
                .findFirst()
                .orElse(null);
    }

    private static Double level(Levels a, Levels b, int string) {
        for (Loudness loudness : List.of(Loudness.MEDIUM, Loudness.LOUD, Loudness.SOFT)) {
            if (a.own(string, loudness).isPresent() && b.own(string, loudness).isPresent()) {
                return b.own(string, loudness).getAsDouble()
                        - a.own(string, loudness).getAsDouble();
            }
        }
        return null;
    }

    private static Double width(LevelMeasurement measurement, int string) {
        return measurement.windows().stream()
                .filter(window -> window.string() == string)
                .map(TriggerWindow::widthDb)
                .findFirst()
                .orElse(null);
    }

    private static Double minus(Double now, Double was) {
        return now == null || was == null ? null : Double.valueOf(now - was);
    }

    private static String sentence(List<StringDifference> differences, String first, String second) {
        List<String> parts = new ArrayList<>();
        say(parts, differences, StringDifference::levelDb, first, second, "%s is louder by %.1f dB");
        say(
                parts,
                differences,
                StringDifference::signalToNoiseDb,
                first,
                second,
                "%s has %.1f dB more signal above the noise");
        say(parts, differences, lower(StringDifference::humDb), first, second, "%s hums %.1f dB less");
        say(
                parts,
                differences,
                StringDifference::windowDb,
                first,
                second,
                "%s leaves %.1f dB more room for the triggers");
        say(
                parts,
                differences,
                StringDifference::tiltDbPerOctave,
                first,
                second,
                "%s sounds brighter by %.1f dB per octave");
        if (parts.isEmpty()) {
            return "No difference worth a word (1 dB or more on average) between " + first + " and " + second + ".";
        }
        return "On average over the strings, " + parts.stream().collect(Collectors.joining("; ")) + ".";
    }

    private static Function<StringDifference, Double> lower(Function<StringDifference, Double> figure) {
        return difference -> figure.apply(difference) == null ? null : Double.valueOf(-figure.apply(difference));
    }

    private static void say(
            List<String> parts,
            List<StringDifference> differences,
            Function<StringDifference, Double> figure,
            String first,
            String second,
            String pattern) {
        double mean = differences.stream()
                .map(figure)
                .filter(Objects::nonNull)
                .mapToDouble(Double::doubleValue)
                .average()
                .orElse(0);
        if (Math.abs(mean) >= WORTH_A_WORD_DB) {
            parts.add(Words.say(pattern, mean > 0 ? second : first, Math.abs(mean)));
        }
    }
}
