package rosinbook.take.smf;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Objects;
import rosinbook.limit.Limit;

/**
 * A Standard MIDI File.
 *
 * @param format 0 one track, 1 tracks played together, 2 patterns with no common time
 * @param division what a tick means
 * @param tracks in order; exactly one in format 0, unless the file holds none
 */
public record MidiFile(int format, Division division, List<MidiTrack> tracks) {
    /** The longest file read, bytes; a day of playing needs a tenth of it. */
    public static final int MAX_BYTES = Limit.MIDI_BYTES.count();

    /** @throws IllegalArgumentException if the format is not 0 to 2, or format 0 has several tracks */
    public MidiFile {
        if (format < 0 || format > 2) {
            throw new IllegalArgumentException("format is " + format + "; give 0, 1 or 2");
        }
        Objects.requireNonNull(division, "division");
        tracks = List.copyOf(tracks);
        if (format == 0 && tracks.size() > 1) {
            throw new IllegalArgumentException("format 0 holds one track, not " + tracks.size());
        }
    }

    /**
     * Reads a file. Uses memory in proportion to the bytes that are there, whatever the lengths inside claim.
     *
     * @throws MidiFormatException if the bytes are no such file, naming the byte offset and what was expected
     */
    public static MidiFile parse(byte[] bytes) {
        return new SmfParser(bytes).file();
    }

    /** The file as bytes; {@link #parse} reads them back. */
    public byte[] toBytes() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        SmfWriter.write(this, out);
        return out.toByteArray();
    }
}
