package rosinbook.level;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Levels from one mono file per string and loudness. Nobody listened to the other inputs, so leaks stay unknown and a
 * window reaches down to the noise.
 */
final class StrokeFilesMeasurer {
    private StrokeFilesMeasurer() {}

    static LevelMeasurement measure(List<StrokeFile> files, LevelOptions options, Progress progress)
            throws IOException {
        int strings = Math.max(
                Math.max(2, options.openNotes().size()),
                files.stream().mapToInt(StrokeFile::string).max().orElse(0));
        Map<Integer, List<FileFigures>> byString = new TreeMap<>();
        int done = 0;
        for (StrokeFile file : files) {
            byString.computeIfAbsent(file.string(), string -> new ArrayList<>()).add(FileFigures.of(file, options));
            progress.at((double) ++done / files.size());
        }
        List<LevelReading> readings = new ArrayList<>();
        List<MeasuredSegment> segments = new ArrayList<>();
        List<InputReport> inputs = new ArrayList<>();
        byString.forEach((string, figures) -> {
            for (FileFigures one : figures) {
                segments.add(one.segment());
                readings.add(new LevelReading(
                        string, one.segment().loudness(), string, one.segment().rmsDbfs()));
            }
            inputs.add(FileFigures.together(figures));
        });
        double quietest =
                inputs.stream().mapToDouble(InputReport::noiseDbfs).max().orElse(0);
        List<Double> noise = IntStream.rangeClosed(1, strings)
                .mapToObj(input -> inputs.stream()
                        .filter(report -> report.input() == input)
                        .map(InputReport::noiseDbfs)
                        .findFirst()
                        .orElse(quietest))
                .toList();
        segments.sort(Comparator.comparingInt(MeasuredSegment::string).thenComparing(MeasuredSegment::loudness));
        return assembled(
                new Levels(InputOrder.straight(strings), strings, readings, noise, LevelUnit.DBFS),
                inputs,
                segments,
                options);
    }

    private static LevelMeasurement assembled(
            Levels levels, List<InputReport> inputs, List<MeasuredSegment> segments, LevelOptions options) {
        List<TriggerWindow> windows = TriggerWindow.of(levels, options.marginDb());
        Remarks remarks = new Remarks();
        remarks.onStrings(levels, segments, options);
        remarks.onWindows(windows);
        remarks.onInputs(inputs, Double.POSITIVE_INFINITY);
        remarks.note(
                "One file per string and loudness tells nothing about leaks: windows reach down to the noise only.");
        return new LevelMeasurement(
                levels,
                options.mains().hertz(),
                inputs,
                segments,
                Crosstalk.of(levels),
                windows,
                StringRange.ofAll(options.openNotes(), options.referenceHertz()),
                null,
                remarks.warnings(),
                remarks.notes());
    }
}
