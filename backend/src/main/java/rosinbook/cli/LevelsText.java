package rosinbook.cli;

import java.util.List;
import java.util.Locale;
import rosinbook.level.InputReport;
import rosinbook.level.LevelReport;
import rosinbook.level.MeasuredSegment;
import rosinbook.level.SensitivityAdvice;
import rosinbook.level.StringRange;
import rosinbook.level.TriggerWindow;

/** A level report for a person to read. */
final class LevelsText {
    private final StringBuilder text = new StringBuilder();

    private LevelsText() {}

    static String of(LevelReport report) {
        LevelsText page = new LevelsText();
        page.line("Levels in %s.", report.levelsAre());
        page.inputs(report.inputs());
        page.segments(report.segments());
        page.crosstalk(report);
        page.windows(report.windows());
        page.advice(report.advice());
        page.strings(report.strings());
        page.sentences("Warnings", report.warnings());
        page.sentences("Notes", report.notes());
        page.sentences("Take care", report.cautions());
        return page.text.toString();
    }

    private void line(String pattern, Object... figures) {
        text.append(String.format(Locale.ROOT, pattern, figures)).append('\n');
    }

    private void inputs(List<InputReport> inputs) {
        if (inputs.isEmpty()) {
            return;
        }
        line("%nInput    noise      hum     peak  signal/noise  clipped  offset");
        for (InputReport input : inputs) {
            line(
                    "%5d  %7.1f  %7s  %7.1f  %12s  %7d  %6.4f",
                    input.input(),
                    input.noiseDbfs(),
                    input.humDbfs() == null ? "?" : (input.humStandsOut() ? "" : "<") + figure(input.humDbfs()),
                    input.peakDbfs(),
                    figure(input.signalToNoiseDb()),
                    input.clippedSamples(),
                    input.dcOffset());
        }
    }

    private void segments(List<MeasuredSegment> segments) {
        if (segments.isEmpty()) {
            return;
        }
        line("%nString  loudness     from       to    level     peak    pitch");
        for (MeasuredSegment segment : segments) {
            line(
                    "%6d  %-8s  %7.2f  %7.2f  %7.1f  %7.1f  %7s",
                    segment.string(),
                    segment.loudness(),
                    segment.fromSeconds(),
                    segment.toSeconds(),
                    segment.rmsDbfs(),
                    segment.peakDbfs(),
                    figure(segment.hertz()));
        }
    }

    private void crosstalk(LevelReport report) {
        line("%nLeaks in dB: string bowed down, input heard across (< means no more than that, hidden in noise)");
        for (int string = 0; string < report.crosstalkDb().size(); string++) {
            StringBuilder row = new StringBuilder(String.format(Locale.ROOT, "%6d", string + 1));
            for (int input = 0; input < report.crosstalkDb().get(string).size(); input++) {
                Double leak = report.crosstalkDb().get(string).get(input);
                boolean isBound = leak != null
                        && !report.crosstalkAboveNoise().get(string).get(input);
                row.append(String.format(Locale.ROOT, "%8s", (isBound ? "<" : "") + figure(leak)));
            }
            line("%s", row);
        }
    }

    private void windows(List<TriggerWindow> windows) {
        line("%nTrigger windows: string, from, to, width in dB");
        for (TriggerWindow window : windows) {
            line(
                    "%6d  %7.1f  %7.1f  %6.1f%s",
                    window.string(),
                    window.lowDbfs(),
                    window.highDbfs(),
                    window.widthDb(),
                    window.isOpen() ? "" : "  no window");
        }
    }

    private void advice(List<SensitivityAdvice> advice) {
        sentences(
                "Sensitivities",
                advice.stream().map(SensitivityAdvice::sentence).toList());
    }

    private void strings(List<StringRange> strings) {
        sentences(
                "Range and least delay of pitch detection (two periods)",
                strings.stream()
                        .map(string -> String.format(
                                Locale.ROOT,
                                "String %d: %s %.1f Hz, %.1f ms; up to %s %.1f Hz, %.1f ms.%s",
                                string.string(),
                                string.open(),
                                string.openHertz(),
                                string.openDelayMillis(),
                                string.highest(),
                                string.highestHertz(),
                                string.highestDelayMillis(),
                                string.remark() == null ? "" : " " + string.remark()))
                        .toList());
    }

    private void sentences(String title, List<String> sentences) {
        if (sentences.isEmpty()) {
            return;
        }
        line("%n%s", title);
        sentences.forEach(sentence -> line("  %s", sentence));
    }

    private static String figure(Double figure) {
        return figure == null ? "?" : String.format(Locale.ROOT, "%.1f", figure);
    }
}
