package rosinbook.take;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import rosinbook.pitch.Note;
import rosinbook.take.smf.Division;
import rosinbook.take.smf.TempoMap;

/** Writes takes note by note, in seconds, for tests: 960 ticks a second, string n on channel n. */
final class Playing {
    static final TempoMap TICKS = TempoMap.of(new Division.Metrical(480), List.of());

    private final Tuning tuning;
    private final List<TakeNote> notes = new ArrayList<>();

    Playing(Tuning tuning) {
        this.tuning = tuning;
    }

    static Playing violin() {
        return new Playing(Tuning.VIOLIN);
    }

    Playing note(int string, String name, double on, double off, int velocity) {
        return note(string, Note.parse(name).midi(), on, off, velocity);
    }

    Playing note(int string, int key, double on, double off, int velocity) {
        notes.add(takeNote(string, key, on, off, velocity, false));
        return this;
    }

    Playing hanging(int string, String name, double on, double off, int velocity) {
        notes.add(takeNote(string, Note.parse(name).midi(), on, off, velocity, true));
        return this;
    }

    Take take() {
        return take(tuning, notes);
    }

    static Take take(Tuning tuning, List<TakeNote> notes) {
        return new Take(Notes.inOrder(notes), tuning, StringLayout.fromChannel(1), TICKS, List.of(), List.of());
    }

    static TakeNote takeNote(int string, int key, double on, double off, int velocity, boolean hanging) {
        long onTick = TICKS.tick(on);
        long offTick = TICKS.tick(off);
        return new TakeNote(
                0,
                string,
                string,
                new Note(key),
                0,
                velocity,
                onTick,
                offTick,
                TICKS.seconds(onTick),
                TICKS.seconds(offTick),
                hanging);
    }

    /** A take of the published set: {@code o1_air}, {@code truth}, for example. */
    static Take published(String piece, String setting) {
        Tuning tuning = piece.equals("o4_five") ? Tuning.FIVE_STRING : Tuning.VIOLIN;
        return TakeReader.of(Optional.of(tuning), OptionalInt.of(1)).read(publishedBytes(piece, setting));
    }

    static byte[] publishedBytes(String piece, String setting) {
        String name = "/published/takes/" + piece + "." + setting + ".mid";
        try (InputStream in = Playing.class.getResourceAsStream(name)) {
            return in.readAllBytes();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** What matters of notes when two takes are compared. */
    static List<String> shape(Take take) {
        List<String> shape = new ArrayList<>();
        for (TakeNote note : take.notes()) {
            shape.add(note.string() + " " + note.note() + " " + note.onTick() + "-" + note.offTick() + " v"
                    + note.velocity());
        }
        return shape;
    }
}
