package rosinbook.level;

import java.util.List;
import rosinbook.pitch.Note;

/**
 * What a measurement is told beforehand.
 *
 * @param openNotes open note of string 1 (highest), 2 and so on; empty if not known: then every input has a string
 * @param inputOfString input of string 1, 2 and so on, from 1; empty: input k hears string k
 * @param mains the frequency of the mains
 * @param marginDb room on either side of a trigger window, 0 or more
 * @param segments which string is bowed when; empty: to be found
 * @param referenceHertz what A4 is tuned to
 * @param waveformPoints the most points per input of the waveform for drawing, 1 or more
 */
public record LevelOptions(
        List<Note> openNotes,
        List<Integer> inputOfString,
        Mains mains,
        double marginDb,
        List<Segment> segments,
        double referenceHertz,
        int waveformPoints) {
    /** @throws IllegalArgumentException naming what is out of range */
    public LevelOptions {
        openNotes = List.copyOf(openNotes);
        inputOfString = List.copyOf(inputOfString);
        segments = List.copyOf(segments);
        if (!(marginDb >= 0 && marginDb <= 40)) {
            throw new IllegalArgumentException("a margin of " + marginDb + " dB; give 0 to 40");
        }
        if (!(referenceHertz >= 300 && referenceHertz <= 600)) {
            throw new IllegalArgumentException("A4 at " + referenceHertz + " Hz; give 300 to 600");
        }
        if (waveformPoints < 1) {
            throw new IllegalArgumentException("a waveform of " + waveformPoints + " points; give 1 or more");
        }
        if (!openNotes.isEmpty() && !inputOfString.isEmpty() && openNotes.size() != inputOfString.size()) {
            throw new IllegalArgumentException(openNotes.size() + " strings but the inputs of " + inputOfString.size()
                    + "; give one input for each string");
        }
    }

    /** Nothing told: tuning unknown, input k hears string k, mains to be found, usual margin, segments to be found. */
    public static LevelOptions usual() {
        return new LevelOptions(List.of(), List.of(), Mains.FIND, TriggerWindow.USUAL_MARGIN_DB, List.of(), 440, 1200);
    }

    public LevelOptions withOpenNotes(List<Note> notes) {
        return new LevelOptions(notes, inputOfString, mains, marginDb, segments, referenceHertz, waveformPoints);
    }

    public LevelOptions withInputOfString(List<Integer> inputs) {
        return new LevelOptions(openNotes, inputs, mains, marginDb, segments, referenceHertz, waveformPoints);
    }

    public LevelOptions withMains(Mains frequency) {
        return new LevelOptions(
                openNotes, inputOfString, frequency, marginDb, segments, referenceHertz, waveformPoints);
    }

    public LevelOptions withMarginDb(double decibels) {
        return new LevelOptions(openNotes, inputOfString, mains, decibels, segments, referenceHertz, waveformPoints);
    }

    public LevelOptions withSegments(List<Segment> corrected) {
        return new LevelOptions(openNotes, inputOfString, mains, marginDb, corrected, referenceHertz, waveformPoints);
    }

    /** Which input hears string 1, 2 and so on among this many inputs. */
    List<Integer> inputOrder(int inputs) {
        if (!inputOfString.isEmpty()) {
            return inputOfString;
        }
        return InputOrder.straight(openNotes.isEmpty() ? inputs : openNotes.size());
    }
}
