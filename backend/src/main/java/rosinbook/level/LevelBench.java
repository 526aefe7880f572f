package rosinbook.level;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The level bench: from a recording, from readings of a meter, or from the notes a synth played. Stateless and thread-safe. */
public final class LevelBench {
    private LevelBench() {}

    /**
     * Measures a recording with a channel per input.
     *
     * @throws UnreadableWav if the file is damaged or of another kind
     * @throws UnusableRecording if it was read, but is silent or has fewer than two strings bowed
     * @throws IllegalArgumentException if the options do not fit the recording
     */
    public static LevelMeasurement measure(Recording recording, LevelOptions options, Progress progress)
            throws IOException {
        return RecordingMeasurer.measure(recording, options, progress);
    }

    /**
     * Opens one file with a channel per input, or several mono files, file k being input k.
     *
     * @throws UnreadableWav if a file is damaged or of another kind
     */
    public static Recording open(List<Path> files) throws IOException {
        List<WavRecording> opened = new ArrayList<>();
        for (Path file : files) {
            opened.add(WavRecording.open(file));
        }
        return together(opened);
    }

    /** One file with a channel per input, or several mono files, file k being input k. */
    public static Recording together(List<WavRecording> opened) {
        return opened.size() == 1 ? opened.get(0) : new MonoFiles(opened);
    }

    /**
     * Measures one mono file per string and loudness; leaks stay unknown.
     *
     * @throws UnusableRecording if a file is silent
     */
    public static LevelMeasurement measureStrokeFiles(List<StrokeFile> files, LevelOptions options, Progress progress)
            throws IOException {
        return StrokeFilesMeasurer.measure(files, options, progress);
    }

    /** Works from levels that somebody read off a meter; see {@link MeterReadings}. */
    public static LevelMeasurement fromLevels(Levels levels, LevelOptions options) {
        List<TriggerWindow> windows = TriggerWindow.of(levels, options.marginDb());
        Remarks remarks = new Remarks();
        remarks.onReadings(levels);
        remarks.onWindows(windows);
        Crosstalk crosstalk = Crosstalk.of(levels);
        remarks.onCrosstalk(crosstalk);
        return new LevelMeasurement(
                levels,
                0,
                List.of(),
                List.of(),
                crosstalk,
                windows,
                StringRange.ofAll(options.openNotes(), options.referenceHertz()),
                null,
                remarks.warnings(),
                remarks.notes());
    }

    /**
     * Works from the notes of a take in which every string was bowed soft, medium and loud.
     *
     * @param strings how many strings the instrument has, 2 to 8
     */
    public static LevelMeasurement fromNotes(List<PlayedNote> notes, int strings, LevelOptions options) {
        return NoteMeasurer.measure(notes, strings, options);
    }
}
