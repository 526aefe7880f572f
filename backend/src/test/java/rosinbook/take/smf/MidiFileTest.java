package rosinbook.take.smf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rosinbook.take.Take;
import rosinbook.take.TakeNote;
import rosinbook.take.TakeReader;

class MidiFileTest {
    /** Standard MIDI Files 1.0, the example at the end, format 0. */
    static final String EXAMPLE_0 = "4D546864 00000006 0000 0001 0060 4D54726B 0000003B 00FF580404021808 00FF510307A120"
            + " 00C005 00C12E 00C246 00923060 003C60 60914340 60904C20 8140823040 003C40 00814340 00804C40 00FF2F00";
    /** The same music, format 1. */
    static final String EXAMPLE_1 = "4D546864 00000006 0001 0004 0060 4D54726B 00000014 00FF580404021808 00FF510307A120"
            + " 8300FF2F00 4D54726B 00000010 00C005 8140904C20 81404C00 00FF2F00 4D54726B 0000000F 00C12E 60914340"
            + " 82204300 00FF2F00 4D54726B 00000015 00C246 00923060 003C60 83003000 003C00 00FF2F00";

    @ParameterizedTest
    @CsvSource({"0", "1"})
    void the_examples_of_the_standard_give_their_four_notes(int format) {
        MidiFile file = MidiFile.parse(bytes(format == 0 ? EXAMPLE_0 : EXAMPLE_1));
        assertEquals(format, file.format());
        assertEquals(new Division.Metrical(96), file.division());
        Take take = TakeReader.GUESSING.read(file);
        List<String> notes = new ArrayList<>();
        for (TakeNote note : take.notes()) {
            notes.add("channel " + note.channel() + " note " + note.note().midi() + " velocity " + note.velocity() + " "
                    + note.onTick() + "-" + note.offTick());
        }
        notes.sort(null);
        assertEquals(
                List.of(
                        "channel 1 note 76 velocity 32 192-384",
                        "channel 2 note 67 velocity 64 96-384",
                        "channel 3 note 48 velocity 96 0-384",
                        "channel 3 note 60 velocity 96 0-384"),
                notes);
        assertEquals(2.0, take.tempoMap().seconds(384), 1e-12);
    }

    /** Standard MIDI Files 1.0, "Variable-Length Quantities", the whole table. */
    @ParameterizedTest
    @CsvSource({
        "00000000, 00",
        "00000040, 40",
        "0000007F, 7F",
        "00000080, 8100",
        "00002000, C000",
        "00003FFF, FF7F",
        "00004000, 818000",
        "00100000, C08000",
        "001FFFFF, FFFF7F",
        "00200000, 81808000",
        "08000000, C0808000",
        "0FFFFFFF, FFFFFF7F"
    })
    void variable_length_quantities_are_those_of_the_table(String number, String bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        VariableLength.write(out, Long.parseLong(number, 16));
        assertArrayEquals(bytes(bytes), out.toByteArray());
        String track = bytes + "FF2F00";
        MidiFile file = MidiFile.parse(
                bytes("4D54686400000006000000010060 4D54726B" + String.format("%08X", track.length() / 2) + track));
        assertEquals(Long.parseLong(number, 16), file.tracks().get(0).tick(0));
    }

    @Test
    void what_is_written_reads_back() {
        for (String example : List.of(EXAMPLE_0, EXAMPLE_1)) {
            MidiFile file = MidiFile.parse(bytes(example));
            assertEquals(events(file), events(MidiFile.parse(file.toBytes())));
        }
    }

    @Test
    void alien_chunks_and_long_headers_are_skipped() {
        String file = "4D546864 00000008 0000 0001 0060 BEEF 58465968 00000003 010203 4D54726B 00000008"
                + " 00903C40 00FF2F00";
        assertEquals(2, MidiFile.parse(bytes(file)).tracks().get(0).size());
    }

    @ParameterizedTest
    @CsvSource({"E728, 1000", "E250, 2400", "E804, 96", "E350, 2397.602397602398"})
    void smpte_division_counts_frames(String division, double ticksPerSecond) {
        // Standard MIDI Files 1.0: E7 28 is 25 frames of 40 ticks, a millisecond each; 29 stands for 30 drop-frame
        MidiFile file = MidiFile.parse(bytes("4D54686400000006 0000 0000" + division));
        assertEquals(1 / ticksPerSecond, TempoMap.of(file.division(), List.of()).seconds(1), 1e-15);
    }

    @Test
    void a_tempo_map_gives_the_seconds_of_every_stretch() {
        TempoMap map = TempoMap.of(
                new Division.Metrical(480),
                List.of(new TempoMap.Change(960, 250_000), new TempoMap.Change(480, 1_000_000)));
        assertEquals(0.5, map.seconds(480), 1e-12);
        assertEquals(1.5, map.seconds(960), 1e-12);
        assertEquals(1.75, map.seconds(1440), 1e-12);
        for (long tick : new long[] {0, 1, 479, 480, 481, 959, 960, 5000}) {
            assertEquals(tick, map.tick(map.seconds(tick)));
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "                                                        | 0  | starts with MThd",
                "4D546864                                                | 0  | starts with MThd",
                "52494646 00000006 0000 0001 0060 4D54726B               | 0  | starts with MThd",
                "4D546864 00000004 0000 0001 0060                        | 4  | header length 4",
                "4D546864 00000006 0003 0001 0060                        | 8  | format 3",
                "4D546864 00000006 0000 0002 0060                        | 10 | 2 tracks in a format 0",
                "4D546864 00000006 0000 0001 0000                        | 12 | division 0",
                "4D546864 00000006 0000 0001 E600                        | 12 | division",
                "4D546864 00FFFFFF 0000 0001 0060                        | 4  | only 6 left",
                "4D546864 00000006 0000 0001 0060                        | 14 | ends after 0 tracks",
                "4D546864 00000006 0000 0001 0060 4D54726B 000000FF 00   | 18 | only 1 left",
                "4D546864 00000006 0000 0001 0060 4D54726B 00000003 003C40 | 23 | no status before it",
                "4D546864 00000006 0000 0001 0060 4D54726B 00000004 00903CFF | 25 | FF where a data byte",
                "4D546864 00000006 0000 0001 0060 4D54726B 00000002 0090  | 24 | track ends where a data byte",
                "4D546864 00000006 0000 0001 0060 4D54726B 00000006 00FF01FFFF7F | 25 | an event of 2097151 bytes",
                "4D546864 00000006 0000 0001 0060 4D54726B 00000006 8080808000FF | 22 | more than four bytes",
                "4D546864 00000006 0000 0001 0060 4D54726B 00000002 00F8  | 23 | F8 has no place",
                "4D546864 00000006 0000 0001 0060 4D54726B 00000007 00FF5103000000 | 26 | a tempo of 0",
                "4D546864 00000006 0000 0001 0060 4D54726B 00000006 00FF51020101 | 25 | a tempo of 2 bytes",
                "4D546864 00000006 0000 0001 0060 4D54726B 0000000C 00903C40 00FF0100 003C4000 | 31 | no status before it"
            })
    void a_broken_file_is_refused_with_the_byte_and_the_reason(String hex, int offset, String reason) {
        var problem = assertThrows(MidiFormatException.class, () -> MidiFile.parse(bytes(hex == null ? "" : hex)));
        assertEquals(offset, problem.byteOffset(), problem.getMessage());
        assertTrue(problem.getMessage().contains(reason), problem.getMessage());
    }

    @Test
    void the_wrongly_copied_example_in_circulation_is_refused() {
        // its second track counts 16 bytes but holds 15, so the next chunk starts one byte late
        String wrong = EXAMPLE_1.replace("8140904C20 81404C00", "00904C20 83004C00");
        assertThrows(MidiFormatException.class, () -> MidiFile.parse(bytes(wrong)));
    }

    @Test
    void a_recording_of_sound_given_by_mistake_is_refused_before_it_is_read() {
        var problem = assertThrows(MidiFormatException.class, () -> MidiFile.parse(new byte[MidiFile.MAX_BYTES + 1]));
        assertTrue(problem.getMessage().contains("recording of sound"), problem.getMessage());
    }

    static List<String> events(MidiFile file) {
        List<String> events = new ArrayList<>();
        for (int number = 0; number < file.tracks().size(); number++) {
            MidiTrack track = file.tracks().get(number);
            for (int index = 0; index < track.size(); index++) {
                events.add(number + " " + track.tick(index) + " " + track.status(index) + " " + track.data1(index) + " "
                        + track.data2(index) + " " + HexFormat.of().formatHex(track.payload(index)));
            }
        }
        return events;
    }

    static byte[] bytes(String hex) {
        return HexFormat.of().parseHex(hex.replace(" ", ""));
    }
}
