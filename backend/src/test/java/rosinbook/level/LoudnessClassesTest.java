package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static rosinbook.level.Loudness.LOUD;
import static rosinbook.level.Loudness.MEDIUM;
import static rosinbook.level.Loudness.SOFT;

import java.util.List;
import org.junit.jupiter.api.Test;

class LoudnessClassesTest {
    @Test
    void three_strokes_are_ranked_however_close() {
        assertEquals(List.of(LOUD, SOFT, MEDIUM), LoudnessClasses.of(List.of(-15.0, -16.8, -15.5)));
    }

    @Test
    void more_strokes_are_parted_at_their_natural_breaks() {
        assertEquals(
                List.of(SOFT, SOFT, MEDIUM, MEDIUM, LOUD, LOUD, MEDIUM),
                LoudnessClasses.of(List.of(-28.0, -27.0, -20.0, -21.0, -14.0, -13.0, -20.5)));
    }

    @Test
    void two_are_soft_and_loud_and_one_is_medium() {
        assertEquals(List.of(LOUD, SOFT), LoudnessClasses.of(List.of(-10.0, -20.0)));
        assertEquals(List.of(MEDIUM), LoudnessClasses.of(List.of(-10.0)));
        assertEquals(List.of(), LoudnessClasses.of(List.of()));
    }
}
