package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rosinbook.pitch.Note;

class StringRangeTest {
    /** Two periods of the equal-tempered note at A4 = 440 Hz (ISO 16); the floor after Fonseca and Tavares, RITA 27(4), 2020. */
    @ParameterizedTest
    @CsvSource({
        "E1, 41.203, 48.5",
        "C2, 65.406, 30.6",
        "G2, 97.999, 20.4",
        "C3, 130.813, 15.3",
        "G3, 195.998, 10.2",
        "D4, 293.665, 6.8",
        "A4, 440, 4.5",
        "E5, 659.255, 3.0",
        "F2, 87.307, 22.9",
        "Bb1, 58.270, 34.3"
    })
    void the_floor_is_two_periods_of_the_open_note(String note, double hertz, double millis) {
        Note open = Note.parse(note);
        StringRange range = StringRange.of(1, open, new Note(open.midi() + 24), 440);
        assertEquals(hertz, range.openHertz(), 0.001);
        assertEquals(millis, range.openDelayMillis(), 0.05);
        assertEquals(millis / 4, range.highestDelayMillis(), 0.05);
    }

    @Test
    void only_a_string_slower_than_10_milliseconds_is_called_slow_by_nature() {
        assertTrue(StringRange.of(4, Note.parse("G3"), Note.parse("G5"), 440)
                .remark()
                .contains("physics"));
        assertNull(StringRange.of(3, Note.parse("D4"), Note.parse("D6"), 440).remark());
    }

    @Test
    void a_highest_note_below_the_open_one_is_refused() {
        var problem = assertThrows(
                IllegalArgumentException.class, () -> StringRange.of(2, Note.parse("A4"), Note.parse("G4"), 440));
        assertTrue(problem.getMessage().contains("lies below its open note A4"), problem.getMessage());
    }
}
