package rosinbook.level;

import java.nio.ByteBuffer;
import rosinbook.limit.Limit;

/** The "fmt " chunk: what kind of samples follow. */
record WavFormatChunk(int channels, int sampleRate, SampleFormat samples) {
    private static final int INTEGER = 1;
    private static final int FLOAT = 3;
    private static final int EXTENSIBLE = 0xFFFE;

    private static final String WAY_OUT = "Export the recording as 16, 24 or 32 bit integer, or 32 bit float";

    /** What follows the format's number in a sub-format identifier, XXXXXXXX-0000-0010-8000-00AA00389B71 (RFC 2361). */
    private static final int SUB_FORMAT_MIDDLE = 0x0010_0000;

    private static final long SUB_FORMAT_END = 0x719B_3800_AA00_0080L;

    int frameBytes() {
        return channels * samples.bytes();
    }

    static WavFormatChunk parse(ByteBuffer chunk, long offset) throws UnreadableWav {
        if (chunk.remaining() < 16) {
            throw new UnreadableWav(
                    offset, "The format chunk has " + chunk.remaining() + " bytes; it needs 16 or more");
        }
        int tag = chunk.getShort(0) & 0xFFFF;
        int channels = chunk.getShort(2) & 0xFFFF;
        int sampleRate = chunk.getInt(4);
        int frameBytes = chunk.getShort(12) & 0xFFFF;
        int bits = chunk.getShort(14) & 0xFFFF;
        Limit.CHANNELS.check(channels);
        if (channels < 1) {
            throw new UnreadableWav(
                    offset + 2,
                    "The header says " + channels + " channels; 1 to " + WavFormat.MAX_CHANNELS
                            + " can be read, one per string");
        }
        Limit.SAMPLE_RATE.check(Integer.toUnsignedLong(sampleRate));
        if (sampleRate < WavFormat.MIN_SAMPLE_RATE) {
            throw new UnreadableWav(
                    offset + 4,
                    "The header says " + sampleRate + " samples a second; " + WavFormat.MIN_SAMPLE_RATE + " to "
                            + WavFormat.MAX_SAMPLE_RATE + " can be read");
        }
        int coding = tag == EXTENSIBLE ? subFormat(chunk, bits, offset) : tag;
        SampleFormat samples = samples(coding, bits, offset);
        if (frameBytes != channels * samples.bytes()) {
            throw new UnreadableWav(
                    offset + 12,
                    "The header contradicts itself: " + channels + " channels of " + bits + " bits take "
                            + channels * samples.bytes() + " bytes, but it says " + frameBytes);
        }
        return new WavFormatChunk(channels, sampleRate, samples);
    }

    private static int subFormat(ByteBuffer chunk, int bits, long offset) throws UnreadableWav {
        if (chunk.remaining() < 40) {
            throw new UnreadableWav(
                    offset,
                    "The header is of the extensible kind, which takes 40 bytes, but has only " + chunk.remaining());
        }
        int validBits = chunk.getShort(18) & 0xFFFF;
        if (validBits > bits) {
            throw new UnreadableWav(
                    offset + 18,
                    "The header says " + validBits + " valid bits in a container of " + bits + "; that cannot be");
        }
        if (chunk.getShort(26) != 0 || chunk.getInt(28) != SUB_FORMAT_MIDDLE || chunk.getLong(32) != SUB_FORMAT_END) {
            throw new UnreadableWav(offset + 24, "The header names a coding this reader does not know. " + WAY_OUT);
        }
        return chunk.getShort(24) & 0xFFFF;
    }

    private static SampleFormat samples(int coding, int bits, long offset) throws UnreadableWav {
        if (coding == INTEGER && bits == 16) {
            return SampleFormat.INT16;
        }
        if (coding == INTEGER && bits == 24) {
            return SampleFormat.INT24;
        }
        if (coding == INTEGER && bits == 32) {
            return SampleFormat.INT32;
        }
        if (coding == FLOAT && bits == 32) {
            return SampleFormat.FLOAT32;
        }
        if (coding != INTEGER && coding != FLOAT) {
            throw new UnreadableWav(
                    offset, "The samples are coded (format number " + coding + "), not plain. " + WAY_OUT);
        }
        throw new UnreadableWav(
                offset + 14,
                "The header says " + bits + " bits per " + (coding == FLOAT ? "float" : "integer") + " sample. "
                        + WAY_OUT);
    }
}
