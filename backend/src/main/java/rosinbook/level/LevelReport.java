package rosinbook.level;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Map;

/**
 * A measurement and its advice in the shape that the command prints and the page reads.
 *
 * @param inputs one report per input; empty without a recording
 * @param segments the strokes in order of time
 * @param crosstalkDb {@code [string bowed][input heard]}, 0 on the string's own input, null if not measured
 * @param crosstalkAboveNoise where that leak is 6 dB or more above the noise; elsewhere it is a bound
 * @param crosstalkDbByLoudness the same for soft, medium and loud alone
 * @param windows one per string that was bowed
 * @param advice one per window; empty if no scale is known
 * @param strings range and delay; empty if the tuning is not known
 * @param mainsHertz which mains were listened for; 0 if none
 * @param levelsAre what 0 dB means
 * @param warnings what makes the result doubtful or a string unusable
 * @param notes what is good to know
 * @param cautions said beside every result
 * @param waveform for drawing; left out where not wanted or not known
 */
public record LevelReport(
        List<InputReport> inputs,
        List<MeasuredSegment> segments,
        List<List<Double>> crosstalkDb,
        List<List<Boolean>> crosstalkAboveNoise,
        Map<Loudness, Crosstalk.Table> crosstalkDbByLoudness,
        List<TriggerWindow> windows,
        List<SensitivityAdvice> advice,
        List<StringRange> strings,
        int mainsHertz,
        LevelUnit levelsAre,
        List<String> warnings,
        List<String> notes,
        List<String> cautions,
        @JsonInclude(JsonInclude.Include.NON_NULL) Waveform waveform) {
    /** Everything, with the waveform. */
    public static LevelReport of(LevelMeasurement measurement, List<SensitivityAdvice> advice) {
        return new LevelReport(
                measurement.inputs(),
                measurement.segments(),
                measurement.crosstalk().db(),
                measurement.crosstalk().aboveNoise(),
                measurement.crosstalk().byLoudness(),
                measurement.windows(),
                List.copyOf(advice),
                measurement.strings(),
                measurement.mainsHertz(),
                measurement.levels().unit(),
                measurement.warnings(),
                measurement.notes(),
                LevelMeasurement.CAUTIONS,
                measurement.waveform());
    }

    /** The same without the waveform, which is long. */
    public LevelReport withoutWaveform() {
        return new LevelReport(
                inputs,
                segments,
                crosstalkDb,
                crosstalkAboveNoise,
                crosstalkDbByLoudness,
                windows,
                advice,
                strings,
                mainsHertz,
                levelsAre,
                warnings,
                notes,
                cautions,
                null);
    }
}
