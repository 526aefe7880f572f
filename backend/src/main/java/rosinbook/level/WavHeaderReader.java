package rosinbook.level;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/**
 * Walks the chunks of a RIFF or RF64 file as far as the samples. Holds one chunk header at a time, skips what it does not
 * know, and believes no length that the file itself does not bear out.
 *
 * @see "Microsoft: Multiple Channel Audio Data and WAVE Files; EBU Tech 3306 (RF64); RFC 2361"
 */
final class WavHeaderReader {
    private static final long UNKNOWN_SIZE = 0xFFFF_FFFFL;

    private final SeekableByteChannel file;
    private final long fileBytes;
    private long position;
    private WavFormatChunk format;
    private long longDataBytes = -1;

    WavHeaderReader(SeekableByteChannel file) throws IOException {
        this.file = file;
        this.fileBytes = file.size();
    }

    WavFormat read() throws IOException {
        boolean isLong = readStart();
        for (int chunk = 0; chunk < Limit.WAV_CHUNKS.count(); chunk++) {
            long start = position;
            if (fileBytes - start < 8) {
                throw new UnreadableWav(
                        start,
                        "The file ends before any samples: no \"data\" chunk was found. Export the recording again");
            }
            ByteBuffer header = bytes(8, "a chunk header");
            String name = name(header);
            long size = header.getInt() & UNKNOWN_SIZE;
            if (name.equals("data")) {
                return atData(start, size, isLong);
            }
            readBeforeData(name, size, start);
            position = start + 8 + size + (size & 1);
            if (position > fileBytes) {
                throw new UnreadableWav(
                        start,
                        "The chunk \"" + name + "\" says it is " + size + " bytes long, but only "
                                + (fileBytes - start - 8)
                                + " bytes follow: the file is cut short or its header is wrong");
            }
        }
        throw new PastLimit(Limit.WAV_CHUNKS);
    }

    private boolean readStart() throws IOException {
        if (fileBytes < 12) {
            throw new UnreadableWav(
                    0, "The file has " + fileBytes + " bytes; a WAV file starts with a header of at least 44");
        }
        ByteBuffer start = bytes(12, "the header");
        String container = name(start);
        start.getInt();
        String kind = name(start);
        if (!container.equals("RIFF") && !container.equals("RF64")) {
            throw new UnreadableWav(
                    0,
                    "This is no WAV file: it starts with \"" + container + "\"" + guess(container)
                            + ", not with \"RIFF\" or \"RF64\". Export the recording as WAV");
        }
        if (!kind.equals("WAVE")) {
            throw new UnreadableWav(
                    8, "This " + container + " file holds \"" + kind + "\", not \"WAVE\". Export the recording as WAV");
        }
        return container.equals("RF64");
    }

    private void readBeforeData(String name, long size, long start) throws IOException {
        if (name.equals("fmt ")) {
            format = WavFormatChunk.parse(bytes((int) Math.min(size, 40), "the format"), start + 8);
        }
        if (name.equals("ds64")) {
            ByteBuffer sizes = bytes((int) Math.min(size, 16), "the long sizes");
            if (sizes.remaining() < 16) {
                throw new UnreadableWav(
                        start,
                        "The chunk \"ds64\" has " + size + " bytes instead of 28 or more; its lengths are missing");
            }
            longDataBytes = sizes.getLong(8);
        }
    }

    private WavFormat atData(long start, long size, boolean isLong) throws UnreadableWav {
        if (format == null) {
            throw new UnreadableWav(
                    start, "The samples start before any \"fmt \" chunk has said what they are; the file is damaged");
        }
        long dataOffset = start + 8;
        long present = fileBytes - dataOffset;
        long said = size;
        if (size == UNKNOWN_SIZE) {
            if (isLong && longDataBytes < 0) {
                throw new UnreadableWav(
                        start,
                        "An RF64 file must give its length in a \"ds64\" chunk before the samples, and none was found");
            }
            // A WAV written to a pipe cannot know its length and says "all ones": then the samples go on to the end.
            said = isLong ? longDataBytes : present - present % format.frameBytes();
        }
        if (said > present) {
            throw new UnreadableWav(
                    fileBytes,
                    "The header promises " + said + " bytes of samples from byte " + dataOffset + " on, but only "
                            + present + " are there: the file is cut short. Copy or export it again");
        }
        if (said == 0) {
            throw new UnreadableWav(
                    start,
                    "The header says there are no samples at all, and " + present
                            + " bytes follow. The recorder was perhaps not stopped properly; export the recording again");
        }
        if (said % format.frameBytes() != 0) {
            throw new UnreadableWav(
                    start,
                    "The header says " + said + " bytes of samples, which is no multiple of " + format.frameBytes()
                            + " (" + format.channels() + " channels of "
                            + format.samples().bytes() + " bytes): the header is wrong");
        }
        Limit.RECORDING_SECONDS.check(said / format.frameBytes() / format.sampleRate());
        return new WavFormat(
                format.channels(), format.sampleRate(), format.samples(), dataOffset, said / format.frameBytes());
    }

    private ByteBuffer bytes(int count, String what) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(count).order(ByteOrder.LITTLE_ENDIAN);
        file.position(position);
        while (buffer.hasRemaining()) {
            if (file.read(buffer) < 0) {
                throw new UnreadableWav(position, "The file ends in the middle of " + what + ": it is cut short");
            }
        }
        position += count;
        return buffer.flip();
    }

    private static String name(ByteBuffer from) {
        StringBuilder name = new StringBuilder();
        for (int i = 0; i < 4; i++) {
            int c = from.get() & 0xFF;
            name.append(c >= 32 && c < 127 ? (char) c : '?');
        }
        return name.toString();
    }

    private static String guess(String container) {
        return switch (container) {
            case "RIFX" -> " (a big-endian WAV)";
            case "fLaC" -> " (a FLAC file)";
            case "OggS" -> " (an Ogg file)";
            case "FORM" -> " (an AIFF file)";
            case "caff" -> " (a CAF file)";
            case "MThd" -> " (a MIDI file)";
            default -> container.startsWith("ID3") ? " (an MP3 file)" : "";
        };
    }
}
