package rosinbook.take;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Objects;
import rosinbook.pitch.Note;

/**
 * Something wrong in a take, why it is thought so, and what was done about it.
 *
 * @param id kind and note, such as {@code ghost-17}; the same take and thresholds give the same ids
 * @param kind what is wrong
 * @param string on which string, 1 = highest
 * @param atSeconds when, seconds from the start of the file
 * @param note the faulty note
 * @param notes ids of the notes of the take that are involved, the faulty one first
 * @param because the reason, one sentence
 * @param repair what mending it does, one sentence
 * @param refused whether the repair was refused, and so not made
 */
public record Fault(
        String id,
        FaultKind kind,
        int string,
        @JsonProperty("at") double atSeconds,
        Note note,
        List<Integer> notes,
        String because,
        String repair,
        boolean refused) {
    /** @throws NullPointerException if anything is missing */
    public Fault {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(because, "because");
        Objects.requireNonNull(repair, "repair");
        notes = List.copyOf(notes);
    }

    /** The faulty note's MIDI number. */
    @JsonProperty
    public int noteNumber() {
        return note.midi();
    }
}
