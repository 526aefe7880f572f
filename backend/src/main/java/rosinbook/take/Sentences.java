package rosinbook.take;

import java.util.Locale;
import rosinbook.pitch.Note;

/** Words and figures for a player to read. */
final class Sentences {
    private static final String[] INTERVALS = {
        "no step",
        "a semitone",
        "a tone",
        "a minor third",
        "a major third",
        "a fourth",
        "a tritone",
        "a fifth",
        "a minor sixth",
        "a major sixth",
        "a minor seventh",
        "a major seventh",
        "an octave"
    };

    private Sentences() {}

    static String note(int pitch) {
        return pitch < 0 || pitch > 127 ? "note " + pitch : new Note(pitch).toString();
    }

    static String interval(int semitones) {
        return switch (semitones) {
            case 19 -> "a twelfth";
            case 24 -> "two octaves";
            default -> semitones < INTERVALS.length ? INTERVALS[semitones] : semitones + " semitones";
        };
    }

    static String millis(double seconds) {
        return String.format(Locale.ROOT, "%.0f ms", seconds * 1000);
    }
}
