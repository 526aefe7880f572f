package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Map;
import rosinbook.pitch.Note;

/**
 * What the wiring bench needs to know of an instrument.
 *
 * @param connector its socket
 * @param openNotes open strings by string number, 1 the highest; may be empty
 * @param pickup its pickup as a source; absent when not known
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record InstrumentSide(Connector connector, Map<Integer, Note> openNotes, Pickup pickup) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public InstrumentSide {
        Require.present("connector", connector, "give the instrument's connector with its pins");
        openNotes = Require.numbered("openNotes", openNotes);
    }
}
