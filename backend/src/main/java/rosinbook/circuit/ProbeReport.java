package rosinbook.circuit;

import java.util.List;
import java.util.Map;

/**
 * What a probe table tells.
 *
 * @param pins a guess for every pin of the table, by label
 * @param contradictions readings that cannot all be true, and what is missing
 */
public record ProbeReport(Map<String, PinGuess> pins, List<Contradiction> contradictions) {
    /** Copies the contents. */
    public ProbeReport {
        pins = Require.keyed("pins", pins, 1, 40, 12);
        contradictions = List.copyOf(contradictions);
    }

    /**
     * Readings at odds.
     *
     * @param pins labels of the pins concerned; empty when it concerns all
     * @param sentence what does not fit
     * @param settle which reading would decide
     */
    public record Contradiction(List<String> pins, String sentence, String settle) {
        /** Copies the list. */
        public Contradiction {
            pins = List.copyOf(pins);
        }
    }
}
