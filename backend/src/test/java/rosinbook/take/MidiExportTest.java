package rosinbook.take;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is written opens in an independent reader, {@code javax.sound.midi}, and in our own. */
class MidiExportTest {
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void cleaned_takes_read_back_as_they_were(boolean bend) {
        for (String piece : List.of("o1_air", "o2_slides", "o3_reel", "o4_five")) {
            Cleaning cleaning = Cleaner.STANDARD.clean(Playing.published(piece, "over"));
            Take read = TakeReader.like(cleaning.take()).read(new MidiExport(bend).toBytes(cleaning));
            assertEquals(cleaning.cleaned().notes(), read.notes(), piece);
            assertEquals(
                    bend
                            && cleaning.notes().stream()
                                    .anyMatch(note -> note.glide().isPresent()),
                    !read.bends().isEmpty());
        }
    }

    @Test
    void an_independent_reader_finds_a_track_a_string_and_the_same_notes() throws Exception {
        Cleaning cleaning = Cleaner.STANDARD.clean(Playing.published("o4_five", "over"));
        Sequence sequence = MidiSystem.getSequence(new ByteArrayInputStream(new MidiExport(true).toBytes(cleaning)));
        assertEquals(6, sequence.getTracks().length);
        assertEquals(480, sequence.getResolution());
        List<String> expected = new ArrayList<>();
        for (CleanNote note : cleaning.notes()) {
            expected.add(note.note().channel() + " " + note.note().note().midi() + " "
                    + note.note().onTick());
        }
        List<String> found = new ArrayList<>();
        for (Track track : sequence.getTracks()) {
            for (int index = 0; index < track.size(); index++) {
                MidiEvent event = track.get(index);
                if (event.getMessage() instanceof ShortMessage message
                        && message.getCommand() == ShortMessage.NOTE_ON
                        && message.getData2() > 0) {
                    found.add(message.getChannel() + 1 + " " + message.getData1() + " " + event.getTick());
                }
            }
        }
        expected.sort(null);
        found.sort(null);
        assertEquals(expected, found);
    }

    @Test
    void a_slide_bends_to_the_next_note_and_back() {
        Playing playing = Playing.violin().note(3, "E4", 0.5, 1.5, 85);
        for (int step = 0; step < 4; step++) {
            playing.note(3, 65 + step, 1.5 + step * 0.04, 1.54 + step * 0.04, 95);
        }
        Cleaning cleaning =
                Cleaner.STANDARD.clean(playing.note(3, "A4", 1.66, 2.9, 99).take());
        Take read = TakeReader.like(cleaning.take()).read(new MidiExport(true).toBytes(cleaning));
        List<Bend> bends = read.bends();
        for (int index = 1; index < bends.size() - 1; index++) {
            assertTrue(bends.get(index).cents() > bends.get(index - 1).cents(), "straight up");
        }
        assertEquals(480, bends.get(bends.size() - 2).cents(), 25);
        assertEquals(0, bends.get(bends.size() - 1).cents(), 0.01);
        assertEquals(1594, bends.get(bends.size() - 1).tick());
        assertEquals(0, read.notes().get(1).bendCents(), 0.01);
    }
}
