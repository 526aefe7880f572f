package rosinbook.level;

import rosinbook.limit.Limit;

/**
 * What a WAV file's header says, checked against the file.
 *
 * @param channels 1 to 8
 * @param sampleRate Hz, 8000 to 192 000
 * @param samples how a sample is stored
 * @param dataOffset where the first sample lies, in bytes from the start of the file
 * @param frames how many samples each channel has, 1 or more
 */
public record WavFormat(int channels, int sampleRate, SampleFormat samples, long dataOffset, long frames) {
    /** The most channels read. */
    public static final int MAX_CHANNELS = Limit.CHANNELS.count();

    /** The lowest and highest sample rates read, in Hz. */
    public static final int MIN_SAMPLE_RATE = 8_000;

    /** See {@link #MIN_SAMPLE_RATE}. */
    public static final int MAX_SAMPLE_RATE = Limit.SAMPLE_RATE.count();

    /** Bytes that one sample of every channel takes together. */
    public int frameBytes() {
        return channels * samples.bytes();
    }

    /** Length in seconds. */
    public double seconds() {
        return (double) frames / sampleRate;
    }
}
