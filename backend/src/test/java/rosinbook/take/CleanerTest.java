package rosinbook.take;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Faults as players describe them, one by one, and playing that only looks like them. Common practice, no source. */
class CleanerTest {
    @Test
    void a_held_note_heard_again_as_it_swells_is_one_note() {
        Cleaning cleaning = clean(Playing.violin()
                .note(2, "A4", 0.5, 1.1, 80)
                .note(2, "A4", 1.1, 2.4, 96)
                .note(2, "B4", 2.43, 3.4, 82));
        assertEquals(List.of("2 A4 480-2304 v96", "2 B4 2333-3264 v82"), Playing.shape(cleaning.cleaned()));
        Fault split = only(cleaning);
        assertEquals(FaultKind.SPLIT, split.kind());
        assertEquals("split-1", split.id());
        assertEquals(List.of(1, 0), split.notes());
        assertEquals(
                "The same pitch goes on without a gap, and it is 16 louder, as a held note that swells.",
                split.because());
        assertEquals(List.of(0, 1), cleaning.notes().get(0).from());
    }

    @Test
    void repeated_bows_stay_repeated() {
        Playing playing = Playing.violin();
        for (int bow = 0; bow < 12; bow++) {
            playing.note(3, "D4", bow * 0.25, bow * 0.25 + 0.225, 90 + bow % 3);
        }
        assertUntouched(playing);
    }

    @Test
    void repeated_bows_without_a_gap_stay_repeated_where_the_rhythm_asks_for_them() {
        Playing playing = Playing.violin();
        for (int beat = 0; beat < 40; beat++) {
            playing.note(3, 62 + beat % 5, beat * 0.3, beat * 0.3 + 0.28, 90);
        }
        playing.note(3, "E4", 12.0, 12.3, 90).note(3, "E4", 12.3, 12.6, 91).note(3, "F4", 12.6, 12.88, 90);
        assertUntouched(playing);
    }

    @Test
    void a_ringing_octave_inside_a_held_note_is_healed() {
        Cleaning cleaning = clean(Playing.violin()
                .note(4, "B3", 1, 1.4, 90)
                .note(4, "B4", 1.4, 1.44, 95)
                .note(4, "B3", 1.44, 2.2, 88));
        assertEquals(List.of("4 B3 960-2112 v95"), Playing.shape(cleaning.cleaned()));
        assertEquals(FaultKind.BLIP, cleaning.faults().get(0).kind());
        assertTrue(cleaning.faults().get(0).because().contains("an octave away"));
    }

    @Test
    void an_octave_blip_at_the_start_belongs_to_the_note() {
        Cleaning cleaning = clean(Playing.violin().note(4, "C5", 1, 1.03, 90).note(4, "C4", 1.03, 2, 95));
        assertEquals(List.of("4 C4 960-1920 v95"), Playing.shape(cleaning.cleaned()));
        assertEquals(FaultKind.BLIP, only(cleaning).kind());
    }

    @Test
    void a_quick_chromatic_run_between_long_notes_is_a_slide() {
        Playing playing = Playing.violin().note(3, "E4", 0.5, 1.5, 85);
        for (int step = 0; step < 4; step++) {
            playing.note(3, 65 + step, 1.5 + step * 0.04, 1.54 + step * 0.04, 95);
        }
        Cleaning cleaning = clean(playing.note(3, "A4", 1.66, 2.9, 99));
        assertEquals(List.of("3 E4 480-1594 v95", "3 A4 1594-2784 v99"), Playing.shape(cleaning.cleaned()));
        assertEquals(FaultKind.STAIRCASE, only(cleaning).kind());
        assertEquals(new Glide(1440, 1594, 5), cleaning.notes().get(0).glide().orElseThrow());
    }

    @Test
    void a_played_scale_by_semitones_stays_a_scale() {
        Playing playing = Playing.violin();
        for (int step = 0; step < 12; step++) {
            playing.note(3, 62 + step, 1 + step * 0.12, 1.115 + step * 0.12, 90);
        }
        assertUntouched(playing);
    }

    @Test
    void a_trill_stays_a_trill() {
        Playing playing = Playing.violin();
        for (int turn = 0; turn < 20; turn++) {
            playing.note(2, turn % 2 == 0 ? 71 : 73, 1 + turn * 0.07, 1.07 + turn * 0.07, 88);
        }
        assertUntouched(playing);
    }

    @Test
    void a_quiet_copy_on_the_neighbour_is_a_ghost() {
        Cleaning cleaning = clean(Playing.violin().note(2, "A4", 1, 2, 100).note(3, "A4", 1.06, 1.8, 60));
        assertEquals(List.of("2 A4 960-1920 v100"), Playing.shape(cleaning.cleaned()));
        Fault ghost = only(cleaning);
        assertEquals(FaultKind.GHOST, ghost.kind());
        assertEquals(3, ghost.string());
        assertEquals(
                "It sounds at the same pitch and is 40 quieter in velocity than A4 on string 2, which sounds at that"
                        + " moment.",
                ghost.because());
    }

    @Test
    void a_unison_on_two_strings_stays() {
        assertUntouched(Playing.violin()
                .note(2, "A4", 1, 2, 92)
                .note(3, "A4", 1.005, 2.01, 90)
                .note(3, "G4", 2.1, 2.8, 90));
    }

    @Test
    void bariolage_between_an_open_and_a_stopped_string_stays() {
        Playing playing = Playing.violin();
        for (int stroke = 0; stroke < 24; stroke++) {
            playing.note(stroke % 2 == 0 ? 2 : 3, "A4", stroke * 0.15, stroke * 0.15 + 0.2, 90 + stroke % 4);
        }
        assertUntouched(playing);
    }

    @Test
    void a_soft_double_stop_with_its_own_pitch_stays() {
        assertUntouched(Playing.violin().note(3, "D4", 1, 3, 95).note(4, "B3", 1.01, 2.98, 78));
    }

    @Test
    void notes_a_string_cannot_give_are_dropped() {
        Cleaning cleaning = clean(Playing.violin()
                .note(1, "E5", 1, 2, 90)
                .note(1, "D5", 3, 3.3, 80)
                .note(4, "G3", 4, 5, 80)
                .note(4, 87, 6, 6.2, 80));
        assertEquals(List.of("1 E5 960-1920 v90", "4 G3 3840-4800 v80"), Playing.shape(cleaning.cleaned()));
        assertEquals(
                List.of(FaultKind.BELOW_OPEN, FaultKind.ABOVE_FINGERBOARD),
                cleaning.faults().stream().map(Fault::kind).collect(Collectors.toList()));
        assertEquals(
                "String 1 gives nothing below its open E5.",
                cleaning.faults().get(0).because());
    }

    @Test
    void a_note_never_ended_ends_where_its_string_goes_on() {
        Cleaning cleaning = clean(Playing.violin()
                .hanging(2, "A4", 1, 9, 90)
                .note(2, "C5", 2.5, 3, 92)
                .note(1, "E5", 8, 9, 90));
        assertEquals("2 A4 960-2371 v90", Playing.shape(cleaning.cleaned()).get(0));
        assertEquals(FaultKind.HANGING, only(cleaning).kind());
    }

    @Test
    void a_soft_note_that_answers_late_is_put_on_the_beat() {
        Playing playing = Playing.violin();
        for (int beat = 0; beat < 40; beat++) {
            double start = 1 + beat * 0.5 + (beat == 20 ? 0.15 : 0);
            playing.note(3, 62 + beat % 7, start, 1 + beat * 0.5 + 0.475, 90);
        }
        Cleaning cleaning = clean(playing);
        Fault late = only(cleaning);
        assertEquals(FaultKind.LATE, late.kind());
        assertEquals(11.0, cleaning.notes().get(20).note().onSeconds(), 0.01);
    }

    @Test
    void a_refused_repair_is_told_but_not_made() {
        Playing playing = Playing.violin().note(2, "A4", 1, 2, 100).note(3, "A4", 1.06, 1.8, 60);
        Cleaning cleaning = Cleaner.STANDARD.clean(playing.take(), Set.of("ghost-1"));
        assertEquals(Playing.shape(playing.take()), Playing.shape(cleaning.cleaned()));
        assertTrue(only(cleaning).refused());
    }

    @Test
    void refusing_everything_gives_the_take_back() {
        for (String piece : List.of("o1_air", "o2_slides", "o3_reel", "o4_five")) {
            Take take = Playing.published(piece, "over");
            Set<String> refused = Set.of();
            Cleaning cleaning = Cleaner.STANDARD.clean(take, refused);
            for (int round = 0; round < 50 && cleaning.faults().stream().anyMatch(fault -> !fault.refused()); round++) {
                refused = cleaning.faults().stream().map(Fault::id).collect(Collectors.toSet());
                cleaning = Cleaner.STANDARD.clean(take, refused);
            }
            assertEquals(take.notes(), cleaning.cleaned().notes(), piece);
        }
    }

    @Test
    void moving_a_threshold_changes_what_is_found() {
        Take take = Playing.violin()
                .note(2, "A4", 1, 2, 100)
                .note(3, "A4", 1.06, 1.8, 60)
                .take();
        Thresholds wary = Thresholds.STANDARD.with(Threshold.GHOST_START, -12);
        assertEquals(List.of(), new Cleaner(wary).clean(take).faults());
    }

    @Test
    void silence_is_clean() {
        Cleaning cleaning = clean(Playing.violin());
        assertEquals(List.of(), cleaning.notes());
        assertEquals(List.of(), cleaning.faults());
        assertEquals(100, TakeReport.of(cleaning).tracking().percent());
    }

    private static Cleaning clean(Playing playing) {
        return Cleaner.STANDARD.clean(playing.take());
    }

    private static Fault only(Cleaning cleaning) {
        assertEquals(1, cleaning.faults().size(), cleaning.faults().toString());
        return cleaning.faults().get(0);
    }

    private static void assertUntouched(Playing playing) {
        Cleaning cleaning = clean(playing);
        assertEquals(List.of(), cleaning.faults());
        assertEquals(playing.take().notes(), cleaning.cleaned().notes());
    }
}
