package rosinbook.take;

import com.fasterxml.jackson.annotation.JsonValue;

/** What can be wrong with a note. */
public enum FaultKind {
    /** A held note broken in two although the bow did not change. */
    SPLIT("split"),
    /** A slide heard as steps. */
    STAIRCASE("staircase"),
    /** A leak from another string. */
    GHOST("ghost"),
    /** The wrong octave, twelfth or other harmonic, at a start or inside a note. */
    BLIP("blip"),
    /** A note the string cannot give. */
    BELOW_OPEN("below the open string"),
    /** A note beyond the end of the fingerboard. */
    ABOVE_FINGERBOARD("above the fingerboard"),
    /** A note the file never ends. */
    HANGING("hanging"),
    /** A note that answered long after the bow. */
    LATE("late");

    private final String label;

    FaultKind(String label) {
        this.label = label;
    }

    /** The words used on screen and in JSON. */
    @JsonValue
    public String label() {
        return label;
    }
}
