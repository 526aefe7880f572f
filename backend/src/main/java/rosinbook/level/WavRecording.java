package rosinbook.level;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.Channels;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A recording in one WAV file.
 *
 * @param file where it lies
 * @param name what the player calls it
 * @param format what its header says, checked when it was opened
 */
public record WavRecording(Path file, String name, WavFormat format) implements Recording {
    /**
     * Reads and checks the header.
     *
     * @throws UnreadableWav if this is no WAV file, or one of a kind or length that cannot be read
     */
    public static WavRecording open(Path file) throws IOException {
        return open(file, String.valueOf(file.getFileName()));
    }

    /** As {@link #open(Path)}, for a file that the player calls something else. */
    public static WavRecording open(Path file, String name) throws IOException {
        try (SeekableByteChannel channel = Files.newByteChannel(file)) {
            return new WavRecording(file, name, new WavHeaderReader(channel).read());
        }
    }

    @Override
    public int inputs() {
        return format.channels();
    }

    @Override
    public int sampleRate() {
        return format.sampleRate();
    }

    @Override
    public long frames() {
        return format.frames();
    }

    @Override
    public SampleFormat samples() {
        return format.samples();
    }

    @Override
    public SampleStream openAt(long frame) throws IOException {
        SeekableByteChannel channel = Files.newByteChannel(file);
        channel.position(format.dataOffset() + frame * format.frameBytes());
        InputStream bytes = Channels.newInputStream(channel);
        return new WavSamples(bytes, format, frame);
    }
}
