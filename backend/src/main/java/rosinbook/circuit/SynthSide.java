package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Map;
import rosinbook.pitch.Note;

/**
 * What the wiring bench needs to know of a synth.
 *
 * @param connector its socket
 * @param controlLines by the key that pin roles use; may be empty
 * @param inputNotes the open note each input expects, by input number; empty for the usual guitar tuning E4 B3 G3 D3 A2
 *     E2 on inputs 1 to 6
 * @param inputOhms resistance of a string input to ground, Ω; absent when not known
 * @param supplyMilliamps what all rails together can give, mA, above 0; absent when not known
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record SynthSide(
        Connector connector,
        Map<String, ControlLine> controlLines,
        Map<Integer, Note> inputNotes,
        Double inputOhms,
        Double supplyMilliamps) {
    /** What a string input is taken for when nobody measured it, Ω (common practice for piezo inputs, no source). */
    static final double USUAL_INPUT_OHMS = 1e6;

    /** @throws IllegalArgumentException starting with the field that is wrong */
    public SynthSide {
        Require.present("connector", connector, "give the synth's connector with its pins");
        controlLines = Require.keyed("controlLines", controlLines, 0, 40, 40);
        inputNotes = Require.numbered("inputNotes", inputNotes);
        if (inputOhms != null) {
            Require.ohms("inputOhms", inputOhms);
        }
        if (supplyMilliamps != null && !(supplyMilliamps > 0 && supplyMilliamps <= 10_000)) {
            throw new IllegalArgumentException("supplyMilliamps is " + Figures.plain(supplyMilliamps)
                    + "; give milliamps above 0 and at most 10000, or leave it out");
        }
    }

    double inputOhmsOrUsual() {
        return inputOhms == null ? USUAL_INPUT_OHMS : inputOhms;
    }
}
