package rosinbook.level;

import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;

/** The samples of one WAV file, decoded block by block through one buffer. */
final class WavSamples implements SampleStream {
    private static final int BUFFER_FRAMES = 4096;

    private final InputStream bytes;
    private final WavFormat format;
    private final byte[] buffer;
    private long frame;

    WavSamples(InputStream bytes, WavFormat format, long firstFrame) {
        this.bytes = bytes;
        this.format = format;
        this.frame = firstFrame;
        this.buffer = new byte[BUFFER_FRAMES * format.frameBytes()];
    }

    @Override
    public int read(float[][] into, int frames) throws IOException {
        int wanted = (int) Math.min(frames, format.frames() - frame);
        int done = 0;
        while (done < wanted) {
            int some = Math.min(BUFFER_FRAMES, wanted - done);
            int size = some * format.frameBytes();
            if (bytes.readNBytes(buffer, 0, size) < size) {
                throw new UnreadableWav(offset(frame), "The file became shorter while it was read");
            }
            format.samples().decode(buffer, some, into, done);
            if (format.samples() == SampleFormat.FLOAT32) {
                requireNumbers(into, done, done + some);
            }
            frame += some;
            done += some;
        }
        return done;
    }

    private void requireNumbers(float[][] block, int from, int to) throws UnreadableWav {
        for (int channel = 0; channel < block.length; channel++) {
            for (int i = from; i < to; i++) {
                // Only NaN and the infinities differ from themselves less themselves.
                if (block[channel][i] - block[channel][i] != 0) {
                    long at = frame + i - from;
                    throw new UnreadableWav(
                            offset(at) + (long) channel * format.samples().bytes(),
                            String.format(
                                    Locale.ROOT,
                                    "Channel %d holds %s at %.3f s where a number was expected; export the recording again",
                                    channel + 1,
                                    block[channel][i],
                                    (double) at / format.sampleRate()));
                }
            }
        }
    }

    private long offset(long ofFrame) {
        return format.dataOffset() + ofFrame * format.frameBytes();
    }

    @Override
    public void close() throws IOException {
        bytes.close();
    }
}
