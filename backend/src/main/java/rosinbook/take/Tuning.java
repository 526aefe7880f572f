package rosinbook.take;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import rosinbook.pitch.Note;

/**
 * The open strings of the instrument, string 1 first; string 1 is the highest by custom.
 *
 * @param openStrings one to sixteen notes
 */
public record Tuning(List<Note> openStrings) {
    /** Violin: E5 A4 D4 G3. */
    public static final Tuning VIOLIN = parse("E5,A4,D4,G3");
    /** Viola: A4 D4 G3 C3. */
    public static final Tuning VIOLA = parse("A4,D4,G3,C3");
    /** Cello: A3 D3 G2 C2. */
    public static final Tuning CELLO = parse("A3,D3,G2,C2");
    /** Five strings: E5 A4 D4 G3 C3. */
    public static final Tuning FIVE_STRING = parse("E5,A4,D4,G3,C3");

    /** @throws IllegalArgumentException if there are no strings or more than sixteen */
    public Tuning {
        openStrings = List.copyOf(openStrings);
        if (openStrings.isEmpty() || openStrings.size() > 16) {
            throw new IllegalArgumentException(openStrings.size() + " strings; give 1 to 16, like E5,A4,D4,G3");
        }
    }

    /**
     * Reads note names with commas between, string 1 first, such as {@code E5,A4,D4,G3}.
     *
     * @throws IllegalArgumentException if a name is no note
     */
    public static Tuning parse(String names) {
        return new Tuning(Arrays.stream(names.split(",")).map(Note::parse).collect(Collectors.toUnmodifiableList()));
    }

    /** How many strings. */
    public int strings() {
        return openStrings.size();
    }

    /**
     * The open note of a string.
     *
     * @param string 1 to {@link #strings()}
     */
    public Note open(int string) {
        return openStrings.get(string - 1);
    }

    /** The names with commas between; {@link #parse} reads them back. */
    @Override
    public String toString() {
        return openStrings.stream().map(Note::toString).collect(Collectors.joining(","));
    }
}
