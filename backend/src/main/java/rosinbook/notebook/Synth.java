package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Map;
import java.util.stream.Stream;
import rosinbook.circuit.Connector;
import rosinbook.circuit.ControlLine;

/**
 * The sound module that listens to the strings.
 *
 * @param inputs how many strings it can hear, 1 to 16
 * @param connector its socket; absent while nothing is known of it
 * @param controlLines what it reads from its control pins, by line
 * @param inputOhms resistance of a string input to ground, above 0; absent if not known
 * @param supplyMilliamps what its rails may be asked for in all, above 0; absent if unknown
 * @param sensitivityScale its own scale for sensitivity
 * @param memorySlots where it keeps sounds; absent if it has none
 * @param vocabulary its own words for what can be set
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Synth(
        String title,
        Integer inputs,
        Connector connector,
        Map<String, ControlLine> controlLines,
        Double inputOhms,
        Double supplyMilliamps,
        SensitivityScale sensitivityScale,
        MemorySlots memorySlots,
        Vocabulary vocabulary,
        String notes)
        implements Content {
    public Synth {
        title = Require.title("title", title);
        inputs = (int) Require.within("inputs", inputs == null ? 6.0 : inputs, 1, 16, "inputs");
        controlLines = Require.keyed("controlLines", controlLines, 20);
        if (inputOhms != null) {
            Require.within("inputOhms", inputOhms, 1, 1e12, "ohms");
        }
        if (supplyMilliamps != null) {
            Require.within("supplyMilliamps", supplyMilliamps, 0.001, 10_000, "mA");
        }
        Require.present("sensitivityScale", sensitivityScale);
        vocabulary = vocabulary == null ? Vocabulary.EMPTY : vocabulary;
        notes = Require.text("notes", notes);
    }

    @Override
    public Stream<String> searchWords() {
        return Stream.of(notes);
    }

    /**
     * The synth's scale for string sensitivity.
     *
     * @param step smallest change, above 0
     * @param customaryStart where players start, within the scale; absent if there is no custom
     * @param decibelsPerStep what one step does, once measured; absent until then
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record SensitivityScale(Double min, Double max, Double step, Double customaryStart, Double decibelsPerStep) {
        public SensitivityScale {
            Require.finite("min", min);
            Require.finite("max", max);
            if (max <= min) {
                throw new IllegalArgumentException("max is " + max + "; it must be above min, " + min);
            }
            step = Require.within("step", step == null ? 1 : step, 1e-6, max - min, "(no wider than the scale)");
            if (customaryStart != null) {
                Require.within("customaryStart", customaryStart, min, max, "(the scale)");
            }
            if (decibelsPerStep != null) {
                Require.within("decibelsPerStep", decibelsPerStep, -20, 20, "dB");
            }
        }
    }

    /**
     * Numbered places for sounds, as in {@code U1} to {@code U99}.
     *
     * @param prefix letters before the number, up to 10 characters, may be empty
     */
    public record MemorySlots(String prefix, Integer first, Integer last) {
        public MemorySlots {
            prefix = Require.limited("prefix", prefix == null ? "" : prefix, 10);
            Require.within("first", first == null ? null : first.doubleValue(), 0, 99_999, "");
            Require.within("last", last == null ? null : last.doubleValue(), first, 99_999, "");
        }
    }
}
