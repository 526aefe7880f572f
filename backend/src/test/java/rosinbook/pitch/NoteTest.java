package rosinbook.pitch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NoteTest {
    /** Open strings at A4 = 440 Hz (ISO 16), equal temperament; numbers of the MIDI 1.0 note table. */
    @ParameterizedTest
    @CsvSource({
        "E5, 76, 659.255",
        "A4, 69, 440",
        "D4, 62, 293.665",
        "G3, 55, 195.998",
        "C3, 48, 130.813",
        "G2, 43, 97.999",
        "C2, 36, 65.406",
        "F2, 41, 87.307",
        "Bb1, 34, 58.270"
    })
    void open_strings_have_their_published_number_and_frequency(String name, int midi, double hertz) {
        assertEquals(midi, Note.parse(name).midi());
        assertEquals(hertz, new Note(midi).hertz(440), 0.0006);
    }

    @Test
    void every_note_reads_back_its_own_name() {
        for (int midi = 0; midi <= 127; midi++) {
            assertEquals(midi, Note.parse(new Note(midi).toString()).midi());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "H4", "E", "5E", "E55555", "A#b4"})
    void what_is_no_note_is_refused_with_an_example(String text) {
        var problem = assertThrows(IllegalArgumentException.class, () -> Note.parse(text));
        assertTrue(problem.getMessage().contains("write it like E5"), problem.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"A9", "Cb-1"})
    void a_note_outside_the_midi_range_is_refused(String text) {
        var problem = assertThrows(IllegalArgumentException.class, () -> Note.parse(text));
        assertTrue(problem.getMessage().contains("outside 0 to 127"), problem.getMessage());
    }
}
