package rosinbook.level;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What the level bench found out. From readings or a take instead of a recording, {@code inputs} and {@code segments} are
 * empty and the waveform is null.
 *
 * @param levels the levels everything else follows from
 * @param mainsHertz which mains were listened for; 0 if none
 * @param inputs one report per input
 * @param segments the strokes in order of time
 * @param crosstalk who is heard where
 * @param windows one per string that was bowed
 * @param strings range and delay per string; empty if the tuning is not known
 * @param waveform for drawing; null without a recording
 * @param warnings what makes the result doubtful or a string unusable
 * @param notes what is good to know
 */
public record LevelMeasurement(
        Levels levels,
        int mainsHertz,
        List<InputReport> inputs,
        List<MeasuredSegment> segments,
        Crosstalk crosstalk,
        List<TriggerWindow> windows,
        List<StringRange> strings,
        Waveform waveform,
        List<String> warnings,
        List<String> notes) {
    /** Said beside every result. */
    public static final List<String> CAUTIONS = List.of(
            "Turn the synth and the amplifier down before you connect anything again.",
            "Mind your ears: 85 dBA for 8 hours is the limit (NIOSH), and every 3 dB more halves the time.");

    /** Copies the lists. */
    public LevelMeasurement {
        inputs = List.copyOf(inputs);
        segments = List.copyOf(segments);
        windows = List.copyOf(windows);
        strings = List.copyOf(strings);
        warnings = List.copyOf(warnings);
        notes = List.copyOf(notes);
    }

    /** The loudest own peak of every string that was recorded, in dBFS. */
    public Map<Integer, Double> peakDbfsByString() {
        Map<Integer, Double> peaks = new HashMap<>();
        segments.forEach(segment -> peaks.merge(segment.string(), segment.peakDbfs(), Math::max));
        return peaks;
    }
}
