package rosinbook.level;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes test recordings of every kind the reader takes. */
final class WavWriter {
    /** The three headers a recording may have. */
    enum Header {
        CLASSIC,
        EXTENSIBLE,
        RF64
    }

    private WavWriter() {}

    static Path write(Path file, double[][] channels, int sampleRate, SampleFormat format, Header header)
            throws IOException {
        Files.write(file, bytes(channels, sampleRate, format, header));
        return file;
    }

    static Path write(Path file, double[][] channels, int sampleRate) throws IOException {
        return write(file, channels, sampleRate, SampleFormat.INT24, Header.CLASSIC);
    }

    static byte[] bytes(double[][] channels, int sampleRate, SampleFormat format, Header header) {
        int frameBytes = channels.length * format.bytes();
        int dataBytes = channels[0].length * frameBytes;
        boolean isLong = header == Header.RF64;
        int formatBytes = header == Header.CLASSIC ? 16 : 40;
        ByteBuffer out = ByteBuffer.allocate(12 + (isLong ? 36 : 0) + 8 + formatBytes + 8 + dataBytes)
                .order(ByteOrder.LITTLE_ENDIAN);
        name(out, isLong ? "RF64" : "RIFF").putInt(isLong ? -1 : out.capacity() - 8);
        name(out, "WAVE");
        if (isLong) {
            name(out, "ds64")
                    .putInt(28)
                    .putLong(out.capacity() - 8)
                    .putLong(dataBytes)
                    .putLong(channels[0].length)
                    .putInt(0);
        }
        short tag = (short) (format == SampleFormat.FLOAT32 ? 3 : 1);
        int bits = 8 * format.bytes();
        name(out, "fmt ").putInt(formatBytes).putShort(header == Header.CLASSIC ? tag : (short) 0xFFFE);
        out.putShort((short) channels.length).putInt(sampleRate).putInt(sampleRate * frameBytes);
        out.putShort((short) frameBytes).putShort((short) bits);
        if (header != Header.CLASSIC) {
            out.putShort((short) 22)
                    .putShort((short) bits)
                    .putInt(0)
                    .putShort(tag)
                    .putShort((short) 0);
            out.putInt(0x0010_0000).putLong(0x719B_3800_AA00_0080L);
        }
        name(out, "data").putInt(isLong ? -1 : dataBytes);
        for (int frame = 0; frame < channels[0].length; frame++) {
            for (double[] channel : channels) {
                put(out, channel[frame], format);
            }
        }
        return out.array();
    }

    private static ByteBuffer name(ByteBuffer out, String name) {
        return out.put(name.getBytes(StandardCharsets.US_ASCII));
    }

    private static void put(ByteBuffer out, double sample, SampleFormat format) {
        if (format == SampleFormat.FLOAT32) {
            out.putFloat((float) sample);
            return;
        }
        double full = Math.scalb(1.0, 8 * format.bytes() - 1);
        long code = Math.round(Math.max(-full, Math.min(full - 1, sample * full)));
        for (int i = 0; i < format.bytes(); i++) {
            out.put((byte) (code >> 8 * i));
        }
    }
}
