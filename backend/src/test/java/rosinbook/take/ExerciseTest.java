package rosinbook.take;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ExerciseTest {
    private final Exercise exercise = Exercise.of(Tuning.VIOLIN, 60);

    /** The script as somebody plays it who starts the recording at another moment and is a little beside the beat. */
    private static Take played(Exercise exercise, double shiftSeconds, double beside, int leftOut) {
        Random random = new Random(5);
        List<TakeNote> notes = new ArrayList<>();
        for (TakeNote note : exercise.truth().notes()) {
            double on = note.onSeconds() + shiftSeconds + beside * (random.nextDouble() - 0.5);
            if (random.nextInt(100) >= leftOut && on >= 0) {
                notes.add(Playing.takeNote(note.string(), note.note().midi(), on, on + note.seconds(), 70, false));
            }
        }
        return Playing.take(exercise.tuning(), notes);
    }

    @Test
    void every_sort_of_stroke_is_there_on_every_string() {
        List<String> titles =
                exercise.passages().stream().map(Exercise.Passage::title).toList();
        assertEquals(
                List.of("Soft to loud", "Long bows", "Repeats", "Slurs", "Slides", "Crossings", "Double stops"),
                titles);
        exercise.passages()
                .forEach(passage -> assertEquals(
                        4,
                        passage.strokes().stream()
                                .map(Exercise.Scripted::string)
                                .distinct()
                                .count(),
                        passage.title()));
        assertEquals(4, exercise.passages().get(0).firstBeat(), "after the count-in");
        assertTrue(exercise.beats() < 60 * 5, "no longer than five minutes at 60");
    }

    @Test
    void passages_follow_each_other_with_a_rest_between() {
        double end = exercise.countInBeats();
        for (Exercise.Passage passage : exercise.passages()) {
            assertTrue(passage.firstBeat() >= end, passage.title());
            for (Exercise.Scripted stroke : passage.strokes()) {
                assertTrue(stroke.atBeat() >= passage.firstBeat());
                assertTrue(stroke.atBeat() + stroke.beats() <= passage.firstBeat() + passage.beats());
            }
            end = passage.firstBeat() + passage.beats() + 1;
        }
    }

    @Test
    void double_stops_sound_two_neighbouring_strings_at_once() {
        List<Exercise.Scripted> stops = exercise.passages().get(6).strokes();
        for (int index = 0; index < stops.size(); index += 2) {
            assertEquals(stops.get(index).atBeat(), stops.get(index + 1).atBeat());
            assertEquals(stops.get(index).string() + 1, stops.get(index + 1).string());
        }
    }

    @Test
    void the_script_itself_has_no_fault() {
        assertEquals(
                List.of(), Cleaner.STANDARD.clean(played(exercise, 0, 0, 0)).faults());
    }

    @ParameterizedTest
    @ValueSource(doubles = {-3.9, -1.25, 0, 0.5, 17.3})
    void a_take_is_found_along_the_script_wherever_the_recording_began(double shift) {
        Take take = played(exercise, shift, 0.03, 15);
        Scores scores = Scores.of(exercise.truthAlong(take), take);
        assertEquals(1, scores.onset().precision(), 1e-9);
        assertTrue(scores.onset().recall() > 0.75, "what was left out is missed, and nothing else");
    }

    @Test
    void a_take_that_stops_after_two_passages_is_found() {
        Take whole = played(exercise, 2.4, 0.03, 0);
        Take part = whole.withNotes(whole.notes().subList(0, 18));
        assertEquals(1, Scores.of(exercise.truthAlong(part), part).onset().precision(), 1e-9);
    }

    @Test
    void a_take_with_nothing_in_common_starts_with_the_script() {
        Take strange = Playing.violin().note(1, "B6", 3, 4, 60).take();
        Take truth = exercise.truthAlong(strange);
        assertEquals(3, truth.notes().get(0).onSeconds(), 1e-9);
        assertEquals(0, Scores.of(truth, strange).onset().f1());
        assertEquals(
                exercise.truth().notes(),
                exercise.truthAlong(Playing.violin().take()).notes());
    }

    @ParameterizedTest
    @ValueSource(doubles = {29.9, 180.1, Double.NaN})
    void a_tempo_out_of_range_is_refused(double bpm) {
        var refused = assertThrows(IllegalArgumentException.class, () -> Exercise.of(Tuning.VIOLIN, bpm));
        assertTrue(refused.getMessage().contains("30 to 180"), refused.getMessage());
    }

    @Test
    void it_fits_one_string_and_seven() {
        assertEquals(5, Exercise.of(Tuning.parse("A4"), 60).passages().size(), "no crossings, no double stops");
        assertEquals(
                7,
                Exercise.of(Tuning.parse("E5,A4,D4,G3,C3,F2,Bb1"), 60)
                        .passages()
                        .size());
    }
}
