package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;

/** Which of the two connectors. */
public enum Plug {
    /** The instrument's. */
    @JsonProperty("instrument")
    INSTRUMENT("instrument"),
    /** The synth's. */
    @JsonProperty("synth")
    SYNTH("synth");

    private final String word;

    Plug(String word) {
        this.word = word;
    }

    /** The name of one of its pins wherever the bench speaks of it: {@code synth pin 7}. */
    String pin(String label) {
        return word + " pin " + label;
    }

    /** What one of its pins carries, in a player's words: on the synth the pin of a string is an input. */
    String carries(PinRole role) {
        return this == SYNTH && role instanceof PinRole.StringSignal signal
                ? "input " + signal.string()
                : role.describe();
    }

    Connector connector(Wiring wiring) {
        return switch (this) {
            case INSTRUMENT -> wiring.instrument().connector();
            case SYNTH -> wiring.synth().connector();
        };
    }
}
