package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;

/** How much a finding matters. */
public enum Severity {
    /** Could hurt somebody or the gear, or cannot be judged: takes the "ready to solder" mark away. */
    @JsonProperty("unsafe")
    UNSAFE,
    /** Harmless, but it will not do what it is meant to. */
    @JsonProperty("faulty")
    FAULTY,
    /** Works, and could be better. */
    @JsonProperty("advice")
    ADVICE
}
