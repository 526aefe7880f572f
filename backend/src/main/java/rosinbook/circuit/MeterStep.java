package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;

/**
 * One numbered measurement.
 *
 * @param id stays the same as long as the pins and the switches do; readings are kept under it
 * @param number 1, 2, 3 … in the order of measuring
 * @param phase what is plugged in
 * @param kind what is measured
 * @param switches how the switches stand; empty when there is none
 * @param from where the red probe goes, such as {@code instrument pin 1}
 * @param to where the black probe goes
 * @param expected Ω or V by {@code kind}; absent when there must be no connection
 * @param min lowest reading that is good, Ω or V
 * @param max highest reading that is good; absent when there must be no connection
 * @param instruction the whole step as a sentence
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record MeterStep(
        String id,
        int number,
        Phase phase,
        Kind kind,
        String switches,
        String from,
        String to,
        Double expected,
        Double min,
        Double max,
        String instruction) {
    /** What is plugged in while measuring. */
    public enum Phase {
        /** The adapter alone, nothing plugged in. */
        @JsonProperty("unplugged")
        UNPLUGGED,
        /** The synth plugged in and on, the instrument's end free. */
        @JsonProperty("powered")
        POWERED
    }

    /** What is measured. */
    public enum Kind {
        /** A wire: next to no resistance. */
        @JsonProperty("continuity")
        CONTINUITY,
        /** A known resistance. */
        @JsonProperty("resistance")
        RESISTANCE,
        /** No connection. */
        @JsonProperty("isolation")
        ISOLATION,
        /** A steady voltage against ground. */
        @JsonProperty("voltage")
        VOLTAGE
    }

    MeterStep numbered(int place) {
        return new MeterStep(id, place, phase, kind, switches, from, to, expected, min, max, instruction);
    }
}
