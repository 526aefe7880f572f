package rosinbook.level;

import java.io.IOException;

/** Something recorded that can be read again and again, a stretch at a time, so that its length does not matter. */
public sealed interface Recording permits WavRecording, MonoFiles {
    /** How many inputs were recorded, 1 to 8. */
    int inputs();

    /** Hz. */
    int sampleRate();

    /** Samples per input. */
    long frames();

    /** How a sample was stored. */
    SampleFormat samples();

    /**
     * Opens the recording at a sample.
     *
     * @throws IOException if it cannot be read; {@link UnreadableWav} if its content is at fault
     */
    SampleStream openAt(long frame) throws IOException;
}
