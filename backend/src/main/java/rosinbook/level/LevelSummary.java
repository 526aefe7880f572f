package rosinbook.level;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * What of a measurement is worth keeping: enough to compare a later one with it, without the recording.
 *
 * @param measuredOn the day
 * @param source what the levels were taken from
 * @param from the recording's name or another word on where it comes from; may be empty
 * @param marginDb the room on either side of the trigger windows
 * @param strings by string number, {@code "1"} highest
 * @param crosstalkDb {@code [string bowed][input heard]} as in {@link Crosstalk}; null where not measured
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record LevelSummary(
        LocalDate measuredOn,
        LevelSource source,
        String from,
        double marginDb,
        Map<String, StringLevels> strings,
        List<List<Double>> crosstalkDb) {
    static final double MOST_DB = 1000;
    private static final int LONGEST_FROM = 200;

    /** @throws IllegalArgumentException naming what is missing or out of range */
    public LevelSummary {
        if (measuredOn == null || measuredOn.getYear() < 1 || measuredOn.getYear() > 9999) {
            throw new IllegalArgumentException("measuredOn is no day of the years 1 to 9999");
        }
        if (source == null) {
            throw new IllegalArgumentException("source is missing; it is recording, meter or take");
        }
        from = from == null ? "" : from;
        if (from.length() > LONGEST_FROM) {
            throw new IllegalArgumentException("from has more than " + LONGEST_FROM + " characters");
        }
        if (!(marginDb >= 0 && marginDb <= 40)) {
            throw new IllegalArgumentException("marginDb is " + marginDb + "; give 0 to 40");
        }
        strings = checked(strings);
        crosstalkDb = copied(crosstalkDb == null ? List.of() : crosstalkDb);
    }

    private static SortedMap<String, StringLevels> checked(Map<String, StringLevels> given) {
        if (given == null || given.isEmpty()) {
            throw new IllegalArgumentException("strings is empty; a measurement has at least one string");
        }
        given.forEach((number, levels) -> {
            if (!number.matches("[1-8]") || levels == null) {
                throw new IllegalArgumentException("strings has a key that is no string number, 1 to 8, or no levels");
            }
        });
        return Collections.unmodifiableSortedMap(new TreeMap<>(given));
    }

    private static List<List<Double>> copied(List<List<Double>> rows) {
        if (rows.size() > WavFormat.MAX_CHANNELS) {
            throw new IllegalArgumentException("crosstalkDb has " + rows.size() + " rows; 8 is the most");
        }
        List<List<Double>> copies = new ArrayList<>();
        for (List<Double> row : rows) {
            if (row == null || row.size() > WavFormat.MAX_CHANNELS) {
                throw new IllegalArgumentException("crosstalkDb has a row that is not 1 to 8 numbers");
            }
            for (Double leak : row) {
                if (leak != null && !(Math.abs(leak) <= MOST_DB)) {
                    throw new IllegalArgumentException("crosstalkDb has " + leak + " dB, which is no leak");
                }
            }
            copies.add(Collections.unmodifiableList(new ArrayList<>(row)));
        }
        return List.copyOf(copies);
    }

    /** Figures to a hundredth of a decibel: finer than any stroke is repeated. */
    public static LevelSummary of(LevelMeasurement measurement, LocalDate measuredOn, String from) {
        SortedMap<String, StringLevels> strings = new TreeMap<>();
        double marginDb = measurement.windows().stream()
                .mapToDouble(TriggerWindow::marginDb)
                .findFirst()
                .orElse(TriggerWindow.USUAL_MARGIN_DB);
        for (int string = 1; string <= measurement.levels().strings(); string++) {
            strings.put(Integer.toString(string), levelsOf(measurement, string));
        }
        List<List<Double>> crosstalk = measurement.crosstalk().db().stream()
                .map(row -> row.stream().map(LevelSummary::rounded).collect(Collectors.toList()))
                .toList();
        return new LevelSummary(
                measuredOn, LevelSource.of(measurement.levels().unit()), from, marginDb, strings, crosstalk);
    }

    private static StringLevels levelsOf(LevelMeasurement measurement, int string) {
        Levels levels = measurement.levels();
        int input = levels.inputOfString().get(string - 1);
        InputReport heard = measurement.inputs().stream()
                .filter(report -> report.input() == input)
                .findFirst()
                .orElse(null);
        TriggerWindow window = measurement.windows().stream()
                .filter(each -> each.string() == string)
                .findFirst()
                .orElse(null);
        Double meterNoise = levels.noiseDb().isEmpty() ? null : levels.noiseDb().get(input - 1);
        return new StringLevels(
                rounded(heard == null ? meterNoise : Double.valueOf(heard.noiseDbfs())),
                heard == null ? null : rounded(heard.humDbfs()),
                own(levels, string, Loudness.SOFT),
                own(levels, string, Loudness.MEDIUM),
                own(levels, string, Loudness.LOUD),
                rounded(measurement.peakDbfsByString().get(string)),
                heard == null ? null : rounded(heard.signalToNoiseDb()),
                heard == null ? null : rounded(heard.tiltDbPerOctave()),
                window == null ? null : rounded(window.softestStrokeDbfs()),
                window == null ? null : rounded(window.loudestLeakDbfs()),
                window == null ? null : window.leakFromString(),
                window == null ? null : rounded(window.lowDbfs()),
                window == null ? null : rounded(window.highDbfs()));
    }

    private static Double own(Levels levels, int string, Loudness loudness) {
        OptionalDouble own = levels.own(string, loudness);
        return own.isPresent() ? rounded(own.getAsDouble()) : null;
    }

    private static Double rounded(Double figure) {
        return figure == null ? null : Double.valueOf(Math.rint(figure * 100) / 100);
    }

    /** In a sentence's part: {@code measured 2026-11-12 from a recording, trigger windows 12.1, none, 9.4, 8.0 dB}. */
    public String describe() {
        String windows = strings.values().stream()
                .map(StringLevels::windowDb)
                .map(width -> width == null ? "?" : width <= 0 ? "none" : Words.say("%.1f", width))
                .collect(Collectors.joining(", "));
        return "measured " + measuredOn + " from " + source.words() + ", trigger windows " + windows + " dB";
    }
}
