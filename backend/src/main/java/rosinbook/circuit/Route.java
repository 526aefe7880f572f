package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * How one pin reaches another.
 *
 * <p>Straight, preamp and resistor join an instrument pin with a synth pin. A divider ends at a synth pin and starts
 * either at an instrument pin or at the supply pin it names, never both. Tied and open concern one pin of either side.
 * Each position of a switch obeys the same rules.
 *
 * @param instrumentPin label on the instrument's connector; absent when no instrument pin takes part
 * @param synthPin label on the synth's connector; absent when no synth pin takes part
 * @param via what stands in between; a wire if left out
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Route(String instrumentPin, String synthPin, Via via) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public Route {
        instrumentPin = instrumentPin == null ? null : Require.line("instrumentPin", instrumentPin, 1, 12);
        synthPin = synthPin == null ? null : Require.line("synthPin", synthPin, 1, 12);
        via = via == null ? new Via.Straight() : via;
        if (via instanceof Via.Switch choice) {
            for (Via position : choice.positions().values()) {
                requireEnds(instrumentPin, synthPin, position, true);
            }
        } else {
            requireEnds(instrumentPin, synthPin, via, false);
        }
    }

    private static void requireEnds(String instrumentPin, String synthPin, Via via, boolean switched) {
        if (via instanceof Via.Tied || via instanceof Via.Open) {
            boolean bothGiven = instrumentPin != null && synthPin != null;
            if (instrumentPin == null && synthPin == null) {
                throw new IllegalArgumentException("synthPin is missing; say which pin is " + via.describe());
            }
            if (bothGiven && !switched) {
                throw new IllegalArgumentException(
                        "instrumentPin is given beside synthPin; only one pin can be " + via.describe());
            }
            return;
        }
        if (synthPin == null) {
            throw new IllegalArgumentException("synthPin is missing; say which pin of the synth the route ends at");
        }
        if (via instanceof Via.Divider divider) {
            if (instrumentPin == null && divider.supplyPin() == null) {
                throw new IllegalArgumentException(
                        "supplyPin is missing; say which supply pin, or which instrument pin, is divided");
            }
            if (instrumentPin != null && divider.supplyPin() != null && !switched) {
                throw new IllegalArgumentException("supplyPin is given beside instrumentPin; a divider has one source");
            }
            return;
        }
        if (instrumentPin == null) {
            throw new IllegalArgumentException(
                    "instrumentPin is missing; say which pin of the instrument the route starts at");
        }
    }

    /** In words, every value included: {@code instrument pin 2 to synth pin 5, resistor 4.7 kΩ}. */
    public String describe() {
        String from = instrumentPin == null ? "" : Plug.INSTRUMENT.pin(instrumentPin);
        String to = synthPin == null ? "" : Plug.SYNTH.pin(synthPin);
        return from + (from.isEmpty() || to.isEmpty() ? "" : " to ") + to + ", " + via.describe();
    }
}
