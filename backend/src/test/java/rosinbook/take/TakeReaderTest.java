package rosinbook.take;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rosinbook.take.smf.Division;
import rosinbook.take.smf.MidiFile;
import rosinbook.take.smf.MidiTrack;

class TakeReaderTest {
    @Test
    void of_two_notes_with_one_number_the_first_to_start_ends_first() {
        // common practice; MIDI 1.0 leaves it open
        Take take = read(track -> track.message(0, 0x90, 76, 90)
                .message(100, 0x90, 76, 80)
                .message(200, 0x90, 76, 0)
                .message(300, 0x80, 76, 64));
        assertEquals(List.of("1 E5 0-200 v90", "1 E5 100-300 v80"), Playing.shape(take));
    }

    @Test
    void a_note_never_ended_lasts_to_the_end_and_is_marked() {
        Take take = read(track -> track.message(0, 0x90, 76, 90).data(960, 0xFF, 0x2F));
        assertEquals(List.of("1 E5 0-960 v90"), Playing.shape(take));
        assertTrue(take.notes().get(0).hanging());
    }

    @Test
    void all_notes_off_ends_what_sounds_on_its_channel() {
        // MIDI 1.0, channel mode message 123
        Take take = read(track -> track.message(0, 0x90, 76, 90)
                .message(0, 0x91, 69, 90)
                .message(480, 0xB0, 123, 0)
                .message(960, 0x81, 69, 0));
        assertEquals(List.of("1 E5 0-480 v90", "2 A4 0-960 v90"), Playing.shape(take));
    }

    @Test
    void a_bend_counts_by_its_range() {
        // MIDI 1.0: centre 2000 hex, range two semitones until registered parameter 0,0 sets it
        Take take = read(track -> track.message(0, 0xE0, 0x00, 0x60)
                .message(0, 0x90, 76, 90)
                .message(10, 0x80, 76, 0)
                .message(20, 0xB0, 101, 0)
                .message(20, 0xB0, 100, 0)
                .message(20, 0xB0, 6, 12)
                .message(20, 0xB0, 38, 0)
                .message(30, 0x90, 76, 90)
                .message(40, 0x80, 76, 0)
                .message(50, 0xE0, 0, 0)
                .message(50, 0x90, 76, 90)
                .message(60, 0x80, 76, 0));
        assertEquals(
                List.of(100.0, 600.0, -1200.0),
                take.notes().stream().map(TakeNote::bendCents).collect(Collectors.toList()));
        assertEquals(64, take.notes().get(2).pitch(), 1e-9);
    }

    @Test
    void strings_are_guessed_from_the_notes() {
        Take take = TakeReader.GUESSING.read(Playing.publishedBytes("o4_five", "truth"));
        assertEquals(Tuning.FIVE_STRING, take.tuning());
        assertEquals(StringLayout.fromChannel(1), take.layout());
        assertTrue(
                take.remarks().get(0).contains("E5,A4,D4,G3,C3"), take.remarks().toString());
    }

    @Test
    void the_base_channel_is_guessed_and_the_lowest_string_may_come_first() {
        Take take = read(track -> track.message(0, 0x96, 55, 90)
                .message(0, 0x97, 64, 90)
                .message(0, 0x98, 69, 90)
                .message(0, 0x99, 78, 90)
                .message(960, 0x86, 55, 0)
                .message(960, 0x87, 64, 0)
                .message(960, 0x88, 69, 0)
                .message(960, 0x89, 78, 0));
        assertEquals(new StringLayout(StringLayout.By.CHANNEL, 7, false), take.layout());
        assertEquals(
                List.of("1 F#5 0-960 v90", "2 A4 0-960 v90", "3 E4 0-960 v90", "4 G3 0-960 v90"), Playing.shape(take));
    }

    @Test
    void one_channel_and_several_tracks_are_strings_by_track() {
        MidiFile file = new MidiFile(
                1,
                new Division.Metrical(480),
                List.of(note(78).build(), note(70).build(), note(62).build(), note(57).build()));
        Take take = TakeReader.GUESSING.read(file);
        assertEquals(StringLayout.By.TRACK, take.layout().by());
        assertEquals(4, take.notes().get(3).string());
    }

    @Test
    void everything_on_one_channel_is_read_and_said() {
        Take take = TakeReader.GUESSING.read(new MidiFile(0, new Division.Metrical(480), List.of(note(78).build())));
        assertEquals(StringLayout.By.NOTHING, take.layout().by());
        assertTrue(
                take.remarks().get(0).contains("cannot be told apart"),
                take.remarks().toString());
    }

    @Test
    void notes_on_other_channels_are_left_out_and_said() {
        TakeReader reader = TakeReader.of(Optional.of(Tuning.VIOLIN), OptionalInt.of(1));
        MidiTrack.Builder track = note(78).message(480, 0x99, 36, 90).message(960, 0x89, 36, 0);
        Take take = reader.read(new MidiFile(0, new Division.Metrical(480), List.of(track.build())));
        assertEquals(1, take.notes().size());
        assertTrue(
                take.remarks().get(0).startsWith("1 note lies outside"),
                take.remarks().toString());
    }

    @Test
    void a_base_channel_without_room_for_all_strings_is_refused() {
        TakeReader reader = TakeReader.of(Optional.of(Tuning.VIOLIN), OptionalInt.of(14));
        var problem = assertThrows(
                IllegalArgumentException.class, () -> reader.read(Playing.publishedBytes("o1_air", "truth")));
        assertTrue(problem.getMessage().contains("give 13 or less"), problem.getMessage());
    }

    @Test
    void patterns_without_a_common_time_are_laid_end_to_end() {
        MidiFile file = new MidiFile(2, new Division.Metrical(480), List.of(note(78).build(), note(80).build()));
        Take take = TakeReader.of(Optional.of(Tuning.VIOLIN), OptionalInt.of(1)).read(file);
        assertEquals(List.of("1 F#5 0-480 v90", "1 Ab5 480-960 v90"), Playing.shape(take));
    }

    private interface Filling {
        MidiTrack.Builder fill(MidiTrack.Builder track);
    }

    private static Take read(Filling filling) {
        MidiTrack track = filling.fill(new MidiTrack.Builder()).build();
        TakeReader reader = new TakeReader(
                Optional.of(Tuning.VIOLIN),
                OptionalInt.empty(),
                Optional.of(StringLayout.By.CHANNEL),
                Optional.empty());
        return reader.read(new MidiFile(0, new Division.Metrical(480), List.of(track)));
    }

    private static MidiTrack.Builder note(int key) {
        return new MidiTrack.Builder().message(0, 0x90, key, 90).message(480, 0x80, key, 0);
    }
}
