package rosinbook.take;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import rosinbook.take.smf.MidiFile;

/**
 * Makes a take of a MIDI file: pairs note-ons with note-offs, reads pitch bend with its range, and tells strings apart.
 *
 * <p>Of several notes with one number on one channel the first to start is the first to end (common practice; the standard
 * leaves it open). A note that is never ended lasts until the file's last event and is marked as hanging.
 *
 * @param tuning the instrument, or empty to guess
 * @param baseChannel the lowest channel, 1 to 16, or empty to guess
 * @param by what strings are told apart by, or empty to guess
 * @param highestFirst whether the first channel or track is the highest string, or empty to guess
 */
public record TakeReader(
        Optional<Tuning> tuning,
        OptionalInt baseChannel,
        Optional<StringLayout.By> by,
        Optional<Boolean> highestFirst) {
    /** Guesses everything. */
    public static final TakeReader GUESSING =
            new TakeReader(Optional.empty(), OptionalInt.empty(), Optional.empty(), Optional.empty());

    /** A reader that knows the instrument; an absent channel is guessed. */
    public static TakeReader of(Optional<Tuning> tuning, OptionalInt baseChannel) {
        return new TakeReader(tuning, baseChannel, Optional.empty(), Optional.empty());
    }

    /** A reader that knows all that another take was read with: for a truth file beside it. */
    public static TakeReader like(Take take) {
        return new TakeReader(
                Optional.of(take.tuning()),
                OptionalInt.of(take.layout().baseChannel()),
                Optional.of(take.layout().by()),
                Optional.of(take.layout().highestFirst()));
    }

    /**
     * Reads a file's bytes.
     *
     * @throws rosinbook.take.smf.MidiFormatException if they are no Standard MIDI File
     * @throws IllegalArgumentException if the settings do not fit, such as a base channel too high for the strings
     */
    public Take read(byte[] bytes) {
        return read(MidiFile.parse(bytes));
    }

    /** Reads a parsed file. */
    public Take read(MidiFile file) {
        Performance performance = Performance.of(file);
        LayoutGuess guess = LayoutGuess.of(performance, this);
        List<TakeNote> notes = new ArrayList<>(performance.notes().size());
        List<String> remarks = new ArrayList<>(guess.remarks());
        int strings = guess.tuning().strings();
        int outside = 0;
        for (Performance.Heard heard : performance.notes()) {
            int string = guess.layout().string(heard.channel(), heard.track(), strings);
            if (string == 0) {
                outside++;
                continue;
            }
            notes.add(heard.toNote(string, performance.tempoMap()));
        }
        if (outside > 0) {
            remarks.add(outside + (outside == 1 ? " note lies" : " notes lie")
                    + " outside the strings' channels or tracks and "
                    + (outside == 1 ? "was" : "were") + " left out.");
        }
        List<Bend> bends = new ArrayList<>(performance.bends());
        bends.sort(Comparator.comparingLong(Bend::tick));
        return new Take(Notes.inOrder(notes), guess.tuning(), guess.layout(), performance.tempoMap(), bends, remarks);
    }
}
