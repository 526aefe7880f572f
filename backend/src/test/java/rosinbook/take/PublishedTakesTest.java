package rosinbook.take;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Takes of a general-purpose tracker with known truth (published/takes). The floors lie a little under what the cleaner reaches,
 * so that a change for the worse is noticed.
 */
class PublishedTakesTest {
    private static final List<String> PIECES = List.of("o1_air", "o2_slides", "o3_reel", "o4_five");

    @ParameterizedTest
    @CsvSource({"reasonable, 0.96, 0.86", "over, 0.96, 0.84", "under, 0.75, 0.37"})
    void cleaned_takes_agree_with_the_truth_on_average(String setting, double onset, double withEnds) {
        double onsetSum = 0;
        double withEndsSum = 0;
        for (String piece : PIECES) {
            Scores scores = cleaned(piece, setting);
            onsetSum += scores.onset().f1();
            withEndsSum += scores.onsetOffset().f1();
        }
        assertTrue(onsetSum / 4 >= onset, "onset F1 " + onsetSum / 4);
        assertTrue(withEndsSum / 4 >= withEnds, "F1 with ends " + withEndsSum / 4);
    }

    @ParameterizedTest
    @ValueSource(strings = {"under", "reasonable", "over"})
    void no_take_is_much_worse_for_being_cleaned(String setting) {
        for (String piece : PIECES) {
            Take truth = Playing.published(piece, "truth");
            Scores raw = Scores.of(truth, Playing.published(piece, setting));
            Scores cleaned = cleaned(piece, setting);
            assertTrue(cleaned.onset().f1() >= raw.onset().f1() - 0.01, piece + " onset");
            assertTrue(cleaned.onsetOffset().f1() >= raw.onsetOffset().f1() - 0.01, piece + " with ends");
        }
    }

    @Test
    void what_was_really_bowed_is_left_alone() {
        for (String piece : PIECES) {
            Take truth = Playing.published(piece, "truth");
            Cleaning cleaning = Cleaner.STANDARD.clean(truth);
            assertEquals(List.of(), cleaning.faults(), piece);
            assertEquals(truth.notes(), cleaning.cleaned().notes(), piece);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"under", "reasonable", "over"})
    void a_cleaned_take_is_clean(String setting) {
        for (String piece : PIECES) {
            Take cleaned =
                    Cleaner.STANDARD.clean(Playing.published(piece, setting)).cleaned();
            Cleaning again = Cleaner.STANDARD.clean(cleaned);
            assertEquals(List.of(), again.faults(), piece);
            assertEquals(cleaned.notes(), again.cleaned().notes(), piece);
        }
    }

    private static Scores cleaned(String piece, String setting) {
        Take truth = Playing.published(piece, "truth");
        return Scores.of(
                truth, Cleaner.STANDARD.clean(Playing.published(piece, setting)).cleaned());
    }
}
