package rosinbook.take.smf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import rosinbook.take.Cleaner;
import rosinbook.take.Cleaning;
import rosinbook.take.MidiExport;
import rosinbook.take.Take;
import rosinbook.take.TakeReader;
import rosinbook.take.TakeReport;

/** Any bytes at all: read, or refused with a byte offset; never anything else. */
class MidiFuzzTest {
    @Property(seed = "8017", tries = 2000)
    void any_bytes_behind_a_header_are_read_or_refused(
            @ForAll @Size(max = 200) byte[] track, @ForAll @IntRange(min = 0, max = 2) int format) {
        byte[] file = new byte[22 + track.length];
        byte[] head = MidiFileTest.bytes(
                "4D546864 00000006 000" + format + " 0001 0060 4D54726B 000000" + String.format("%02X", track.length));
        System.arraycopy(head, 0, file, 0, 22);
        System.arraycopy(track, 0, file, 22, track.length);
        readOrRefuse(file);
    }

    @Property(seed = "8017", tries = 2000)
    void a_good_file_with_a_few_bytes_changed_is_read_or_refused(
            @ForAll @Size(min = 1, max = 4) List<@IntRange(min = 0, max = 117) Integer> places, @ForAll byte change) {
        byte[] file = MidiFileTest.bytes(MidiFileTest.EXAMPLE_1);
        places.forEach(place -> file[place] ^= change);
        readOrRefuse(file);
    }

    @Property(seed = "8017", tries = 500)
    void a_file_cut_short_is_refused(@ForAll @IntRange(min = 0, max = 117) int length) {
        byte[] whole = MidiFileTest.bytes(MidiFileTest.EXAMPLE_1);
        try {
            MidiFile.parse(Arrays.copyOf(whole, length));
            throw new AssertionError("read " + length + " of 118 bytes");
        } catch (MidiFormatException refused) {
            assertTrue(refused.byteOffset() <= length, refused.getMessage());
        }
    }

    private static void readOrRefuse(byte[] bytes) {
        MidiFile file;
        try {
            file = MidiFile.parse(bytes);
        } catch (MidiFormatException refused) {
            assertTrue(refused.byteOffset() >= 0 && refused.byteOffset() <= bytes.length, refused.getMessage());
            return;
        }
        assertEquals(MidiFileTest.events(file).size(), countedIn(file));
        Take take = TakeReader.GUESSING.read(file);
        Cleaning cleaning = Cleaner.STANDARD.clean(take);
        TakeReport.of(cleaning);
        MidiFile.parse(new MidiExport(true).toBytes(cleaning));
    }

    private static int countedIn(MidiFile file) {
        return file.tracks().stream().mapToInt(MidiTrack::size).sum();
    }
}
