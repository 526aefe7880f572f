package rosinbook.take;

import java.util.List;
import java.util.Objects;
import rosinbook.take.smf.TempoMap;

/**
 * A recording of playing, as notes on strings.
 *
 * @param notes in order of their start, then string, then pitch; ids count from 0
 * @param tuning the instrument's strings
 * @param layout how the strings were told apart
 * @param tempoMap ticks to seconds
 * @param bends pitch bends in order of time
 * @param remarks what a player should know about how the file was read, in sentences; may be empty
 */
public record Take(
        List<TakeNote> notes,
        Tuning tuning,
        StringLayout layout,
        TempoMap tempoMap,
        List<Bend> bends,
        List<String> remarks) {
    /** @throws NullPointerException if anything is missing */
    public Take {
        notes = List.copyOf(notes);
        bends = List.copyOf(bends);
        remarks = List.copyOf(remarks);
        Objects.requireNonNull(tuning, "tuning");
        Objects.requireNonNull(layout, "layout");
        Objects.requireNonNull(tempoMap, "tempoMap");
    }

    /** From the first start to the last end; 0 without notes. */
    public double seconds() {
        if (notes.isEmpty()) {
            return 0;
        }
        double end = 0;
        for (TakeNote note : notes) {
            end = Math.max(end, note.offSeconds());
        }
        return end - notes.get(0).onSeconds();
    }

    /** Whether leaks from one string to another can be told at all. */
    public boolean stringsApart() {
        return layout.by() != StringLayout.By.NOTHING && tuning.strings() > 1;
    }

    /** The same take with other notes, numbered anew in order. */
    Take withNotes(List<TakeNote> newNotes) {
        return new Take(Notes.inOrder(newNotes), tuning, layout, tempoMap, bends, remarks);
    }
}
