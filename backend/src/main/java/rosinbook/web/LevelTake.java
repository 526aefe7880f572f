package rosinbook.web;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import rosinbook.level.LevelBench;
import rosinbook.level.LevelMeasurement;
import rosinbook.level.LevelOptions;
import rosinbook.level.PlayedNote;
import rosinbook.take.Cleaner;
import rosinbook.take.Fault;
import rosinbook.take.FaultKind;
import rosinbook.take.Take;
import rosinbook.take.TakeReader;
import rosinbook.take.Tuning;

/** A MIDI take of the exercise: velocities stand in for levels, ghosts for leaks. */
final class LevelTake {
    private LevelTake() {}

    static LevelMeasurement measure(byte[] bytes, LevelOptions options) {
        Optional<Tuning> tuning =
                options.openNotes().isEmpty() ? Optional.empty() : Optional.of(new Tuning(options.openNotes()));
        Take take = TakeReader.of(tuning, OptionalInt.empty()).read(bytes);
        if (!take.stringsApart()) {
            throw new Problem(
                    422,
                    "unusable-take",
                    "This take does not say enough",
                    "All its notes are on one channel; set the synth to mono mode, one channel per string, and play again.");
        }
        Set<Integer> ghosts = Cleaner.STANDARD.clean(take).faults().stream()
                .filter(fault -> fault.kind() == FaultKind.GHOST)
                .map(Fault::notes)
                .map(notes -> notes.get(0))
                .collect(Collectors.toSet());
        List<PlayedNote> notes = take.notes().stream()
                .map(note -> new PlayedNote(note.string(), note.velocity(), ghosts.contains(note.id())))
                .toList();
        return LevelBench.fromNotes(
                notes,
                take.tuning().strings(),
                options.withOpenNotes(take.tuning().openStrings()).withInputOfString(List.of()));
    }
}
