package rosinbook.pitch;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A note of the twelve-tone scale, by its MIDI number.
 *
 * @param midi 0 to 127; 60 is C4, 69 is A4 (scientific pitch names)
 */
public record Note(int midi) {
    private static final Pattern NAME = Pattern.compile("([A-Ga-g])([#b♯♭]?)(-?\\d{1,2})");
    private static final String[] NAMES = {"C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"};
    private static final int[] STEPS = {9, 11, 0, 2, 4, 5, 7};

    /** @throws IllegalArgumentException if {@code midi} is outside 0 to 127 */
    public Note {
        if (midi < 0 || midi > 127) {
            throw new IllegalArgumentException("note number " + midi + " is outside 0 to 127 (60 is C4)");
        }
    }

    /**
     * Reads a scientific pitch name such as {@code E5}, {@code Bb3} or {@code F#4}.
     *
     * @throws IllegalArgumentException if the text is no such name, or the note lies outside MIDI's 0 to 127
     */
    @JsonCreator
    public static Note parse(String name) {
        Matcher matcher = NAME.matcher(name == null ? "" : name.strip());
        if (!matcher.matches()) {
            throw new IllegalArgumentException("'" + shortened(name) + "' is not a note; write it like E5, Bb3 or F#4");
        }
        int step = STEPS[matcher.group(1).toUpperCase(Locale.ROOT).charAt(0) - 'A'];
        int accidental =
                switch (matcher.group(2)) {
                    case "#", "♯" -> 1;
                    case "b", "♭" -> -1;
                    default -> 0;
                };
        return new Note(12 * (Integer.parseInt(matcher.group(3)) + 1) + step + accidental);
    }

    /**
     * Equal-tempered frequency in Hz.
     *
     * @param referenceHertz what A4 is tuned to, Hz, above 0
     * @see "ISO 16: A4 = 440 Hz"
     */
    public double hertz(double referenceHertz) {
        return referenceHertz * Math.pow(2, (midi - 69) / 12.0);
    }

    /** The scientific pitch name; {@link #parse} reads it back. */
    @JsonValue
    @Override
    public String toString() {
        return NAMES[midi % 12] + (midi / 12 - 1);
    }

    private static String shortened(String text) {
        if (text == null) {
            return "";
        }
        if (text.length() <= 20) {
            return text;
        }
        int end = Character.isHighSurrogate(text.charAt(19)) ? 19 : 20;
        return text.substring(0, end) + "…";
    }
}
