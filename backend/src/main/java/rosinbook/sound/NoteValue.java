package rosinbook.sound;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * A note value: how long, relative to the tempo.
 *
 * @param length whole to thirty-second
 * @param feel plain, dotted (3/2 as long) or triplet (2/3 as long)
 */
public record NoteValue(Length length, Feel feel) {
    /** Plain lengths, by their quarter notes. */
    public enum Length {
        WHOLE(4),
        HALF(2),
        QUARTER(1),
        EIGHTH(0.5),
        SIXTEENTH(0.25),
        THIRTY_SECOND(0.125);

        private final double quarters;

        Length(double quarters) {
            this.quarters = quarters;
        }

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** What a dot or a triplet bracket does to a length. */
    public enum Feel {
        PLAIN(1),
        DOTTED(1.5),
        TRIPLET(2 / 3.0);

        private final double factor;

        Feel(double factor) {
            this.factor = factor;
        }

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public NoteValue {
        Objects.requireNonNull(length, "length");
        Objects.requireNonNull(feel, "feel");
    }

    /** Every note value, longest length first; each length plain, dotted, triplet. */
    public static List<NoteValue> all() {
        return Arrays.stream(Length.values())
                .flatMap(length -> Arrays.stream(Feel.values()).map(feel -> new NoteValue(length, feel)))
                .toList();
    }

    /**
     * Reads {@code quarter}, {@code dotted eighth}, {@code triplet sixteenth} and so on.
     *
     * @throws IllegalArgumentException for any other text, listing the known ones
     */
    @JsonCreator
    public static NoteValue parse(String text) {
        return all().stream()
                .filter(value -> value.toString().equals(text))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("note is not a note value; known are "
                        + all().stream().map(NoteValue::toString).collect(Collectors.joining(", "))));
    }

    /** Length in quarter notes: 1 for a quarter, 0.75 for a dotted eighth. */
    public double quarters() {
        return length.quarters * feel.factor;
    }

    /**
     * Duration in milliseconds.
     *
     * @param tempoBpm quarter notes a minute, finite, above 0
     * @throws IllegalArgumentException if the tempo is not finite and above 0
     */
    public double millis(double tempoBpm) {
        if (!(tempoBpm > 0) || Double.isInfinite(tempoBpm)) {
            throw new IllegalArgumentException("tempoBpm is " + tempoBpm + "; give quarter notes a minute, above 0");
        }
        return 60_000 / tempoBpm * quarters();
    }

    /** {@code dotted eighth}, or just {@code eighth} when plain; {@link #parse} reads it back. */
    @JsonValue
    @Override
    public String toString() {
        return feel == Feel.PLAIN ? length.toString() : feel + " " + length;
    }
}
