package rosinbook.level;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads the quiet parts once more, up to ten seconds of them, and listens for hum. */
final class QuietListening {
    private static final int MOST_BLOCKS = 50;

    private QuietListening() {}

    /**
     * @return what every input has; empty if no quiet part lasts a tenth of a second
     */
    static Optional<List<Hum>> hum(Recording recording, Envelope envelope, QuietParts quiet, Mains mains)
            throws IOException {
        int longest = quiet.spans().stream().mapToInt(Span::length).max().orElse(0) * envelope.sliceFrames();
        int fifth = (int) Math.round(recording.sampleRate() / 5.0);
        int block = longest >= fifth ? fifth : (int) Math.round(recording.sampleRate() / 10.0);
        if (longest < block) {
            return Optional.empty();
        }
        List<Hum.Listener> at50 = listeners(recording, 50);
        List<Hum.Listener> at60 = listeners(recording, 60);
        listen(recording, envelope, quiet, block, at50, at60);
        List<Hum> hum50 = at50.stream().map(Hum.Listener::heard).toList();
        List<Hum> hum60 = at60.stream().map(Hum.Listener::heard).toList();
        boolean is60 = mains == Mains.FIND ? total(hum60) > total(hum50) : mains == Mains.HERTZ_60;
        return Optional.of(is60 ? hum60 : hum50);
    }

    private static List<Hum.Listener> listeners(Recording recording, int hertz) {
        List<Hum.Listener> listeners = new ArrayList<>();
        for (int input = 0; input < recording.inputs(); input++) {
            listeners.add(new Hum.Listener(hertz, recording.sampleRate()));
        }
        return listeners;
    }

    private static void listen(
            Recording recording,
            Envelope envelope,
            QuietParts quiet,
            int block,
            List<Hum.Listener> at50,
            List<Hum.Listener> at60)
            throws IOException {
        float[][] samples = new float[recording.inputs()][block];
        int blocks = 0;
        for (Span span : quiet.spans()) {
            long start = (long) span.from() * envelope.sliceFrames();
            long end = Math.min(recording.frames(), (long) span.to() * envelope.sliceFrames());
            try (SampleStream stream = recording.openAt(start)) {
                for (long at = start; at + block <= end && blocks < MOST_BLOCKS; at += block) {
                    stream.read(samples, block);
                    blocks++;
                    for (int input = 0; input < samples.length; input++) {
                        at50.get(input).add(samples[input], block);
                        at60.get(input).add(samples[input], block);
                    }
                }
            }
            if (blocks >= MOST_BLOCKS) {
                return;
            }
        }
    }

    private static double total(List<Hum> hum) {
        return hum.stream().filter(Hum::standsOut).mapToDouble(Hum::power).sum();
    }
}
