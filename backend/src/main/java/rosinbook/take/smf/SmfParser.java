package rosinbook.take.smf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Walks over the bytes of one file, once. */
final class SmfParser {
    private static final int HEADER_BYTES = 14;
    private static final int CHUNK_HEAD_BYTES = 8;
    private static final byte[] NOTHING = {};

    private final byte[] bytes;
    private int at;

    SmfParser(byte[] bytes) {
        this.bytes = bytes;
    }

    MidiFile file() {
        if (bytes.length > MidiFile.MAX_BYTES) {
            throw new MidiFormatException(
                    MidiFile.MAX_BYTES,
                    "the file has " + bytes.length + " bytes; the limit is " + MidiFile.MAX_BYTES
                            + " (is it a recording of sound rather than MIDI?)");
        }
        if (bytes.length < HEADER_BYTES || !"MThd".equals(id(0))) {
            throw new MidiFormatException(0, "expected a Standard MIDI File, which starts with MThd and 10 more bytes");
        }
        long headerLength = uint32(4);
        if (headerLength < 6) {
            throw new MidiFormatException(4, "header length " + headerLength + "; expected 6 or more");
        }
        int format = uint16(8);
        if (format > 2) {
            throw new MidiFormatException(8, "format " + format + "; expected 0, 1 or 2");
        }
        int trackCount = uint16(10);
        if (format == 0 && trackCount > 1) {
            throw new MidiFormatException(10, trackCount + " tracks in a format 0 file; expected 1");
        }
        Division division = division();
        at = endOfChunk(4, headerLength);
        return new MidiFile(format, division, tracks(trackCount));
    }

    private Division division() {
        int bits = uint16(12);
        try {
            if (bits < 0x8000) {
                return new Division.Metrical(bits);
            }
            return new Division.Smpte(256 - (bits >> 8), bits & 0xFF);
        } catch (IllegalArgumentException unknown) {
            throw new MidiFormatException(12, "division " + bits + ": " + unknown.getMessage());
        }
    }

    private List<MidiTrack> tracks(int trackCount) {
        List<MidiTrack> tracks = new ArrayList<>();
        while (tracks.size() < trackCount) {
            if (bytes.length - at < CHUNK_HEAD_BYTES) {
                throw new MidiFormatException(
                        at, "the file ends after " + tracks.size() + " tracks; its header promises " + trackCount);
            }
            boolean track = "MTrk".equals(id(at));
            int end = endOfChunk(at + 4, uint32(at + 4));
            at += CHUNK_HEAD_BYTES;
            if (track) {
                tracks.add(track(end));
            }
            at = end;
        }
        return tracks;
    }

    private MidiTrack track(int end) {
        MidiTrack.Builder track = new MidiTrack.Builder();
        long tick = 0;
        int running = 0;
        while (at < end) {
            tick += quantity(end, "a delta time");
            int first = byteAt(end, "an event");
            if (first >= 0xF0) {
                running = 0;
                if (data(track, tick, first, end)) {
                    break;
                }
                continue;
            }
            if (first >= 0x80) {
                running = first;
                first = dataByte(end);
            } else if (running == 0) {
                throw new MidiFormatException(at - 1, "data byte " + hex(first) + " with no status before it");
            } else {
                at--;
                first = dataByte(end);
            }
            boolean single = (running & 0xE0) == 0xC0;
            track.message(tick, running, first, single ? 0 : dataByte(end));
        }
        return track.build();
    }

    /** True at End of Track. */
    private boolean data(MidiTrack.Builder track, long tick, int status, int end) {
        if (status != MidiTrack.META && status != 0xF0 && status != 0xF7) {
            throw new MidiFormatException(at - 1, "status " + hex(status) + " has no place in a file");
        }
        int kind = status == MidiTrack.META ? dataByte(end) : 0;
        int lengthAt = at;
        int length = quantity(end, "a length");
        if (length > end - at) {
            throw new MidiFormatException(
                    lengthAt, "an event of " + length + " bytes, but its track has only " + (end - at) + " left");
        }
        if (status == MidiTrack.META && kind == MidiTrack.TEMPO && length != 3) {
            throw new MidiFormatException(lengthAt, "a tempo of " + length + " bytes; expected 3");
        }
        if (status == MidiTrack.META && kind == MidiTrack.TEMPO && (bytes[at] | bytes[at + 1] | bytes[at + 2]) == 0) {
            throw new MidiFormatException(at, "a tempo of 0 µs a quarter; expected 1 or more");
        }
        byte[] payload = length == 0 ? NOTHING : Arrays.copyOfRange(bytes, at, at + length);
        track.data(tick, status, kind, payload);
        at += length;
        return status == MidiTrack.META && kind == MidiTrack.END_OF_TRACK;
    }

    private int quantity(int end, String what) {
        int start = at;
        int number = 0;
        for (int count = 0; count < 4; count++) {
            int next = byteAt(end, what);
            number = number << 7 | next & 0x7F;
            if (next < 0x80) {
                return number;
            }
        }
        throw new MidiFormatException(start, what + " of more than four bytes");
    }

    private int dataByte(int end) {
        int found = byteAt(end, "a data byte");
        if (found >= 0x80) {
            throw new MidiFormatException(at - 1, hex(found) + " where a data byte of 00 to 7F was expected");
        }
        return found;
    }

    private int byteAt(int end, String expected) {
        if (at >= end) {
            throw new MidiFormatException(at, "the track ends where " + expected + " was expected");
        }
        return bytes[at++] & 0xFF;
    }

    private int endOfChunk(int lengthAt, long length) {
        long end = lengthAt + 4 + length;
        if (end > bytes.length) {
            throw new MidiFormatException(
                    lengthAt,
                    "a chunk of " + length + " bytes, but the file has only " + (bytes.length - lengthAt - 4)
                            + " left");
        }
        return (int) end;
    }

    private String id(int offset) {
        return new String(bytes, offset, 4, StandardCharsets.ISO_8859_1);
    }

    private int uint16(int offset) {
        return (bytes[offset] & 0xFF) << 8 | bytes[offset + 1] & 0xFF;
    }

    private long uint32(int offset) {
        return (long) uint16(offset) << 16 | uint16(offset + 2);
    }

    private static String hex(int number) {
        return String.format("%02X", number);
    }
}
