package rosinbook.level;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * A recording kept as one mono file per input, all started together: file k is input k. The shortest file ends it.
 *
 * @param files two to eight mono recordings of one sample rate
 */
public record MonoFiles(List<WavRecording> files) implements Recording {
    /** @throws IllegalArgumentException if a file is not mono, the rates differ, or there are fewer than 2 or more than 8 */
    public MonoFiles {
        files = List.copyOf(files);
        if (files.size() < 2 || files.size() > WavFormat.MAX_CHANNELS) {
            throw new IllegalArgumentException(
                    files.size() + " mono files were given; one per input is needed, 2 to " + WavFormat.MAX_CHANNELS);
        }
        for (WavRecording file : files) {
            if (file.inputs() != 1) {
                throw new IllegalArgumentException("'" + file.name() + "' has " + file.inputs()
                        + " channels; give either one file with a channel per string or several mono files");
            }
            if (file.sampleRate() != files.get(0).sampleRate()) {
                throw new IllegalArgumentException("'" + file.name() + "' has " + file.sampleRate()
                        + " samples a second, the first file " + files.get(0).sampleRate()
                        + "; export them all at one rate");
            }
        }
    }

    @Override
    public int inputs() {
        return files.size();
    }

    @Override
    public int sampleRate() {
        return files.get(0).sampleRate();
    }

    @Override
    public long frames() {
        return files.stream().mapToLong(WavRecording::frames).min().orElseThrow();
    }

    /** The coarsest format among the files, which sets the floor for all. */
    @Override
    public SampleFormat samples() {
        return files.stream()
                .map(WavRecording::samples)
                .max((a, b) -> Double.compare(a.floorDbfs(), b.floorDbfs()))
                .orElseThrow();
    }

    @Override
    public SampleStream openAt(long frame) throws IOException {
        List<SampleStream> streams = new ArrayList<>();
        for (WavRecording file : files) {
            streams.add(file.openAt(frame));
        }
        return new SideBySide(streams);
    }

    private record SideBySide(List<SampleStream> streams) implements SampleStream {
        @Override
        public int read(float[][] into, int frames) throws IOException {
            int least = frames;
            for (int input = 0; input < streams.size(); input++) {
                least = Math.min(least, streams.get(input).read(new float[][] {into[input]}, frames));
            }
            return least;
        }

        @Override
        public void close() throws IOException {
            for (SampleStream stream : streams) {
                stream.close();
            }
        }
    }
}
