package rosinbook.take;

import java.util.List;
import java.util.function.Predicate;

/**
 * A take against the truth, four ways. A string's notes are compared with that string's true notes, or all with all.
 *
 * @param onset strings kept apart; pitch and start agree
 * @param onsetOffset strings kept apart; pitch, start and end agree
 * @param pitchOnset all strings together; pitch and start agree
 * @param pitchOnsetOffset all strings together; pitch, start and end agree
 */
public record Scores(NoteScore onset, NoteScore onsetOffset, NoteScore pitchOnset, NoteScore pitchOnsetOffset) {
    /** Scores notes against true notes. */
    public static Scores of(Take truth, Take take) {
        return new Scores(
                perString(truth, take, false),
                perString(truth, take, true),
                together(truth, take, false),
                together(truth, take, true));
    }

    private static NoteScore perString(Take truth, Take take, boolean withEnds) {
        int strings = Math.max(truth.tuning().strings(), take.tuning().strings());
        int matches = 0;
        for (int string = 1; string <= strings; string++) {
            int wanted = string;
            Predicate<TakeNote> onString = note -> note.string() == wanted;
            matches += NoteScore.matches(notes(truth.notes(), onString), notes(take.notes(), onString), withEnds);
        }
        return NoteScore.of(matches, truth.notes().size(), take.notes().size());
    }

    private static NoteScore together(Take truth, Take take, boolean withEnds) {
        int matches =
                NoteScore.matches(notes(truth.notes(), note -> true), notes(take.notes(), note -> true), withEnds);
        return NoteScore.of(matches, truth.notes().size(), take.notes().size());
    }

    private static ScoredNote[] notes(List<TakeNote> notes, Predicate<TakeNote> which) {
        return notes.stream().filter(which).map(ScoredNote::of).toArray(ScoredNote[]::new);
    }
}
