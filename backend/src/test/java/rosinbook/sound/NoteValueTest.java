package rosinbook.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NoteValueTest {
    /** Delay-time tables as printed by audio handbooks (120 bpm rows rounded to whole ms there); 60000 / bpm × quarters. */
    @ParameterizedTest
    @CsvSource({
        "120, whole, 2000, 0.5",
        "120, half, 1000, 0.5",
        "120, quarter, 500, 0.5",
        "120, eighth, 250, 0.5",
        "120, sixteenth, 125, 0.5",
        "120, triplet half, 667, 0.5",
        "120, triplet quarter, 333, 0.5",
        "120, triplet eighth, 167, 0.5",
        "120, triplet sixteenth, 83, 0.5",
        "120, dotted eighth, 375, 0.001",
        "142, eighth, 211.268, 0.001",
        "100, eighth, 300, 0.001",
        "128, triplet quarter, 312.5, 0.001",
        "90, dotted eighth, 500, 0.001"
    })
    void follows_the_published_tempo_tables(double bpm, String note, double millis, double tolerance) {
        assertEquals(millis, NoteValue.parse(note).millis(bpm), tolerance);
    }

    @Test
    void every_note_value_reads_back_its_own_name() {
        assertEquals(18, NoteValue.all().size());
        for (NoteValue value : NoteValue.all()) {
            assertEquals(value, NoteValue.parse(value.toString()));
        }
    }

    @Test
    void an_unknown_note_value_lists_the_known_ones() {
        var problem = assertThrows(IllegalArgumentException.class, () -> NoteValue.parse("crotchet"));
        assertTrue(problem.getMessage().contains("dotted eighth"), problem.getMessage());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void a_tempo_that_is_no_tempo_is_refused(double bpm) {
        var problem = assertThrows(
                IllegalArgumentException.class, () -> NoteValue.parse("quarter").millis(bpm));
        assertTrue(problem.getMessage().startsWith("tempoBpm is"), problem.getMessage());
    }
}
