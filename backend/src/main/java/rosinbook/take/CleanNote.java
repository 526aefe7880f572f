package rosinbook.take;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A note as it was played, once faults are mended.
 *
 * @param note the note; its id counts through the cleaned take
 * @param from ids of the notes of the original take it was made from, in order of time
 * @param glide the slide at its end, if there is one
 */
public record CleanNote(TakeNote note, List<Integer> from, Optional<Glide> glide) {
    /** @throws NullPointerException if anything is missing */
    public CleanNote {
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(glide, "glide");
        from = List.copyOf(from);
    }
}
