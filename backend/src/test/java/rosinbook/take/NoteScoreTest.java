package rosinbook.take;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** The five-note fixture of mir_eval, tests/test_transcription.py, and its rules about edges. */
class NoteScoreTest {
    private static final ScoredNote[] TRUTH = {
        hertz(0.100, 0.300, 220.000),
        hertz(0.300, 0.400, 246.942),
        hertz(0.500, 0.600, 277.183),
        hertz(0.550, 0.650, 293.665)
    };
    private static final ScoredNote[] NOTES = {
        hertz(0.120, 0.290, 225.000),
        hertz(0.300, 0.340, 246.942),
        hertz(0.500, 0.600, 500.000),
        hertz(0.550, 0.600, 293.665),
        hertz(0.560, 0.650, 293.665)
    };

    @Test
    void starts_and_pitches_agree_as_in_the_published_fixture() {
        NoteScore score = score(TRUTH, NOTES, false);
        assertEquals(0.6, score.precision(), 1e-9);
        assertEquals(0.75, score.recall(), 1e-9);
        assertEquals(0.666667, score.f1(), 1e-6);
    }

    @Test
    void with_ends_too_as_in_the_published_fixture() {
        NoteScore score = score(TRUTH, NOTES, true);
        assertEquals(0.4, score.precision(), 1e-9);
        assertEquals(0.5, score.recall(), 1e-9);
        assertEquals(0.444444, score.f1(), 1e-6);
    }

    @Test
    void nothing_scores_nothing() {
        assertEquals(new NoteScore(0, 0, 0), score(new ScoredNote[0], NOTES, false));
        assertEquals(new NoteScore(0, 0, 0), score(TRUTH, new ScoredNote[0], false));
        assertEquals(
                0, score(TRUTH, new ScoredNote[] {hertz(9, 10, 220)}, false).f1());
    }

    @Test
    void fifty_milliseconds_are_near_enough_and_a_tenth_more_is_not() {
        // mir_eval compares with <= after rounding to four decimals
        ScoredNote[] truth = {hertz(0, 1, 100)};
        assertEquals(
                1, score(truth, new ScoredNote[] {hertz(0.05, 1, 100)}, false).f1());
        assertEquals(
                1,
                score(truth, new ScoredNote[] {hertz(0.05004, 1, 100)}, false).f1());
        assertEquals(
                0, score(truth, new ScoredNote[] {hertz(0.0501, 1, 100)}, false).f1());
    }

    @Test
    void a_note_counts_once_and_the_most_pairs_are_found() {
        // taking the nearest first would pair the first note with the second truth and leave the second note alone
        ScoredNote[] truth = {hertz(1.00, 2, 440), hertz(1.04, 2, 440)};
        ScoredNote[] notes = {hertz(1.03, 2, 440), hertz(1.08, 2, 440)};
        assertEquals(1, score(truth, notes, false).f1());
        assertEquals(2 / 3.0, score(truth, new ScoredNote[] {notes[0]}, false).f1(), 1e-12);
    }

    @Test
    void ends_may_differ_by_a_fifth_of_a_long_note() {
        ScoredNote[] truth = {hertz(0, 2, 440)};
        assertEquals(
                1, score(truth, new ScoredNote[] {hertz(0, 1.6, 440)}, true).f1());
        assertEquals(
                0, score(truth, new ScoredNote[] {hertz(0, 1.59, 440)}, true).f1());
    }

    private static NoteScore score(ScoredNote[] truth, ScoredNote[] notes, boolean withEnds) {
        return NoteScore.of(NoteScore.matches(truth, notes, withEnds), truth.length, notes.length);
    }

    private static ScoredNote hertz(double on, double off, double hertz) {
        return new ScoredNote(on, off, 69 + 12 * Math.log(hertz / 440) / Math.log(2));
    }
}
