package rosinbook.web;

import java.util.List;
import java.util.stream.IntStream;
import rosinbook.notebook.Instrument;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Rig;
import rosinbook.notebook.Synth;
import rosinbook.pitch.Note;

/** What the level bench needs to know of a rig. */
record LevelRig(List<Note> openNotes, double referenceHertz, List<Integer> inputs, Synth.SensitivityScale scale) {
    static LevelRig of(Pages pages, Reference reference) {
        Rig rig = (Rig) Notebook.find(pages, Kind.RIGS, reference).content();
        Instrument instrument = (Instrument)
                Notebook.find(pages, Kind.INSTRUMENTS, rig.instrument()).content();
        Synth synth = (Synth) Notebook.find(pages, Kind.SYNTHS, rig.synth()).content();
        List<String> numbers = IntStream.rangeClosed(1, instrument.strings().size())
                .mapToObj(Integer::toString)
                .toList();
        List<Note> notes = numbers.stream()
                .map(number -> instrument.strings().get(number).note())
                .toList();
        List<Integer> inputs = numbers.stream()
                .map(rig.assignments()::get)
                .filter(assignment -> assignment != null && assignment.input() != null)
                .map(Rig.Assignment::input)
                .toList();
        return new LevelRig(
                notes,
                instrument.referencePitchHertz(),
                inputs.size() == notes.size() ? inputs : List.of(),
                synth.sensitivityScale());
    }
}
