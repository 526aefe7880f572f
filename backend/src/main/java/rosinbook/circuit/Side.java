package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;

/** Where the eye is when it looks at a connector; the two views are mirror images of each other. */
public enum Side {
    /** Looking at the face that meets the other connector. */
    @JsonProperty("mating")
    MATING,
    /** Looking at the face where the wires are soldered. */
    @JsonProperty("solder")
    SOLDER
}
