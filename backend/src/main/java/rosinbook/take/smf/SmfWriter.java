package rosinbook.take.smf;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** Puts a file into bytes: full status bytes throughout, so that the simplest reader copes. */
final class SmfWriter {
    private SmfWriter() {}

    static void write(MidiFile file, ByteArrayOutputStream out) {
        id(out, "MThd");
        uint32(out, 6);
        uint16(out, file.format());
        uint16(out, file.tracks().size());
        uint16(out, file.division().toBits());
        for (MidiTrack track : file.tracks()) {
            ByteArrayOutputStream events = new ByteArrayOutputStream(track.size() * 4 + 4);
            write(track, events);
            id(out, "MTrk");
            uint32(out, events.size());
            out.writeBytes(events.toByteArray());
        }
    }

    private static void write(MidiTrack track, ByteArrayOutputStream out) {
        long last = 0;
        boolean ended = false;
        for (int index = 0; index < track.size(); index++) {
            VariableLength.write(out, track.tick(index) - last);
            last = track.tick(index);
            int status = track.status(index);
            out.write(status);
            if (status < 0xF0) {
                out.write(track.data1(index));
                if ((status & 0xE0) != 0xC0) {
                    out.write(track.data2(index));
                }
                continue;
            }
            if (status == MidiTrack.META) {
                out.write(track.data1(index));
                ended = track.data1(index) == MidiTrack.END_OF_TRACK;
            }
            byte[] payload = track.payload(index);
            VariableLength.write(out, payload.length);
            out.writeBytes(payload);
        }
        if (!ended) {
            out.writeBytes(new byte[] {0, (byte) MidiTrack.META, MidiTrack.END_OF_TRACK, 0});
        }
    }

    private static void id(ByteArrayOutputStream out, String id) {
        out.writeBytes(id.getBytes(StandardCharsets.ISO_8859_1));
    }

    private static void uint16(ByteArrayOutputStream out, int number) {
        out.write(number >> 8);
        out.write(number);
    }

    private static void uint32(ByteArrayOutputStream out, int number) {
        uint16(out, number >>> 16);
        uint16(out, number);
    }
}
