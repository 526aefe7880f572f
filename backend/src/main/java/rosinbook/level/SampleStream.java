package rosinbook.level;

import java.io.Closeable;
import java.io.IOException;

/** Samples of a recording in order of time. Not safe for use by several threads. */
public interface SampleStream extends Closeable {
    /**
     * Reads the next samples of every channel.
     *
     * @param into {@code float[channel][frame]}, amplitudes with ±1 at full scale, finite
     * @param frames how many are wanted, at most the length of a row
     * @return how many came, fewer than wanted only at the end; 0 at the end
     * @throws UnreadableWav if the file ends too early or holds a value that is no number
     */
    int read(float[][] into, int frames) throws IOException;
}
