package rosinbook.level;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What a player should be told about a recording, in words. */
final class Remarks {
    private static final double ENOUGH_QUIET_SECONDS = 0.2;
    private static final double LARGE_OFFSET = 0.01;
    private static final double OTHER_NOTE_CENTS = 80;
    private static final double NON_LINEAR_DB = 3;
    private static final double WORTH_A_WORD_DB = 10;

    private final List<String> warnings = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    List<String> warnings() {
        return warnings;
    }

    List<String> notes() {
        return notes;
    }

    void note(String sentence) {
        notes.add(sentence);
    }

    void onStrings(Levels levels, List<MeasuredSegment> segments, LevelOptions options) {
        for (int string = 1; string <= levels.strings(); string++) {
            int of = string;
            List<MeasuredSegment> own =
                    segments.stream().filter(segment -> segment.string() == of).toList();
            if (own.isEmpty()) {
                warnings.add(
                        "String " + string
                                + " is not bowed in this recording, or too softly to be told from the noise; its leaks and its window are not known.");
            } else if (own.stream().map(MeasuredSegment::loudness).distinct().count() < Loudness.values().length) {
                notes.add("String " + string + " has " + own.size() + (own.size() == 1 ? " stroke" : " strokes")
                        + "; three (soft, medium, loud) tell more.");
            }
            if (!options.openNotes().isEmpty()) {
                onPitch(string, options.openNotes().get(string - 1).hertz(options.referenceHertz()), own);
            }
        }
    }

    void onReadings(Levels levels) {
        for (int string = 1; string <= levels.strings(); string++) {
            int of = string;
            if (levels.readings().stream().noneMatch(reading -> reading.string() == of)) {
                warnings.add("String " + string + " has no reading; its leaks and its window are not known.");
            }
        }
    }

    private void onPitch(int string, double openHertz, List<MeasuredSegment> own) {
        double[] heard = own.stream()
                .filter(segment -> segment.hertz() != null)
                .mapToDouble(MeasuredSegment::hertz)
                .sorted()
                .toArray();
        if (heard.length == 0) {
            return;
        }
        double hertz = heard[heard.length / 2];
        if (Math.abs(1200 * Math.log(hertz / openHertz) / Math.log(2)) > OTHER_NOTE_CENTS) {
            warnings.add(Words.say(
                    "String %d sounds at %.1f Hz, its open note is %.1f Hz: is it stopped, tuned otherwise, or are inputs crossed?",
                    string, hertz, openHertz));
        }
    }

    void onWindows(List<TriggerWindow> windows) {
        windows.stream()
                .filter(window -> !window.isOpen())
                .map(TriggerWindow::advice)
                .forEach(warnings::add);
    }

    void onInputs(List<InputReport> inputs, double quietSeconds) {
        for (InputReport input : inputs) {
            if (input.clippedSamples() > 0) {
                warnings.add("Input " + input.input() + " reaches full scale in " + input.clippedSamples()
                        + " samples; lower its trim and record again, or its loud strokes are louder than they read.");
            }
        }
        onOffset(inputs);
        onHum(inputs);
        if (quietSeconds < ENOUGH_QUIET_SECONDS) {
            notes.add(Words.say(
                    "Only %.2f s of quiet were found; a second or two with all strings damped makes noise and hum surer.",
                    quietSeconds));
        }
    }

    private void onOffset(List<InputReport> inputs) {
        List<InputReport> offset = inputs.stream()
                .filter(input -> Math.abs(input.dcOffset()) > LARGE_OFFSET)
                .toList();
        if (!offset.isEmpty()) {
            double most = offset.stream()
                    .mapToDouble(input -> Math.abs(input.dcOffset()))
                    .max()
                    .orElseThrow();
            notes.add(Words.say(
                    "A constant offset of up to %.1f %% of full scale is on input %s; levels are given without it.",
                    100 * most,
                    Words.list(offset.stream().map(InputReport::input).toList())));
        }
    }

    private void onHum(List<InputReport> inputs) {
        List<InputReport> humming = inputs.stream()
                .filter(input -> input.humStandsOut() && input.humDbfs() > input.noiseDbfs() - WORTH_A_WORD_DB)
                .toList();
        if (!humming.isEmpty()) {
            InputReport worst = humming.stream()
                    .max(Comparator.comparing(InputReport::humDbfs))
                    .orElseThrow();
            notes.add(Words.say(
                    "Mains hum is on input %s, worst on input %d at %.1f dBFS, there mostly at %.0f Hz.",
                    Words.list(humming.stream().map(InputReport::input).toList()),
                    worst.input(),
                    worst.humDbfs(),
                    worst.strongestHumHertz()));
        }
    }

    void onCrosstalk(Crosstalk crosstalk) {
        for (int string = 0; string < crosstalk.db().size(); string++) {
            for (int input = 0; input < crosstalk.db().get(string).size(); input++) {
                double spread = spread(crosstalk, string, input);
                if (spread > NON_LINEAR_DB) {
                    notes.add(Words.say(
                            "The leak of string %d into input %d changes by %.1f dB with loudness; it is not a plain leak (a loose seat or an overloaded input does that).",
                            string + 1, input + 1, spread));
                }
            }
        }
    }

    private static double spread(Crosstalk crosstalk, int string, int input) {
        double[] levels = crosstalk.byLoudness().values().stream()
                .filter(table ->
                        Boolean.TRUE.equals(table.aboveNoise().get(string).get(input)))
                .mapToDouble(table -> table.db().get(string).get(input))
                .sorted()
                .toArray();
        return levels.length < 2 ? 0 : levels[levels.length - 1] - levels[0];
    }
}
