package rosinbook.level;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rosinbook.limit.Limit;

/** Measures one recording with a channel per input: reads it once from end to end, then listens again where it matters. */
final class RecordingMeasurer {
    private static final double READING_SHARE = 0.9;

    private final Recording recording;
    private final LevelOptions options;
    private final List<Integer> inputOfString;
    private final Envelope envelope;
    private final QuietParts quiet;

    private RecordingMeasurer(Recording recording, LevelOptions options, Progress progress) throws IOException {
        this.recording = recording;
        this.options = options;
        this.inputOfString = options.inputOrder(recording.inputs());
        InputOrder.require(inputOfString, recording.inputs());
        envelope = Envelope.of(recording, fraction -> progress.at(READING_SHARE * fraction));
        quiet = QuietParts.find(envelope, Decibels.toPower(recording.samples().floorDbfs()));
    }

    static LevelMeasurement measure(Recording recording, LevelOptions options, Progress progress) throws IOException {
        if (recording.inputs() < 2) {
            throw new UnusableRecording(
                    "This file has one channel; to compare strings give one file with a channel per string,"
                            + " one mono file per input, or one mono file per string and loudness");
        }
        RecordingMeasurer measurer = new RecordingMeasurer(recording, options, progress);
        LevelMeasurement measurement = measurer.measure();
        progress.at(1);
        return measurement;
    }

    private LevelMeasurement measure() throws IOException {
        List<Stroke> strokes = options.segments().isEmpty() ? found() : given();
        List<Tone> tones = listen(strokes);
        List<Segment> segments = options.segments().isEmpty() ? named(strokes, tones) : options.segments();
        requireTwoStrings(segments);
        Optional<List<Hum>> hum = QuietListening.hum(recording, envelope, quiet, options.mains());
        return new MeasurementAssembler(recording, options, inputOfString, envelope, quiet, hum)
                .assemble(segments, strokes, tones);
    }

    private List<Stroke> found() {
        List<Integer> inputs = inputOfString.stream().map(input -> input - 1).toList();
        List<Stroke> strokes = StrokeFinder.find(envelope, quiet.noisePower(), inputs);
        if (strokes.isEmpty()) {
            double loudest = IntStream.range(0, envelope.inputs())
                    .mapToDouble(input -> envelope.totals(input).peak())
                    .max()
                    .orElse(0);
            throw new UnusableRecording(
                    loudest == 0
                            ? "Every sample of this recording is 0; check that the right inputs were recorded"
                            : Words.say(
                                    "No stroke stands out in %.1f s: the loudest peak is %.1f dBFS and nothing comes 10 dB above the"
                                            + " quietest part. Leave a second or two of quiet, then bow each open string soft, medium, loud",
                                    (double) envelope.frames() / envelope.sampleRate(), Decibels.ofAmplitude(loudest)));
        }
        Limit.STROKES.check(strokes.size());
        return strokes;
    }

    private List<Stroke> given() {
        Limit.STROKES.check(options.segments().size());
        List<Stroke> strokes = new ArrayList<>();
        for (Segment segment : options.segments()) {
            if (segment.string() > inputOfString.size()) {
                throw new IllegalArgumentException("a segment names string " + segment.string() + ", but there are "
                        + inputOfString.size() + " strings");
            }
            int from = envelope.sliceAt(segment.fromSeconds());
            int to = envelope.sliceAt(segment.toSeconds());
            if (to <= from) {
                throw new IllegalArgumentException(Words.say(
                        "the segment of string %d from %.3f to %.3f s holds less than %.3f s of this recording of %.3f s",
                        segment.string(),
                        segment.fromSeconds(),
                        segment.toSeconds(),
                        envelope.sliceSeconds(),
                        (double) envelope.frames() / envelope.sampleRate()));
            }
            strokes.add(Stroke.of(envelope, new Span(from, to), inputOfString.get(segment.string() - 1) - 1));
        }
        return strokes;
    }

    private List<Tone> listen(List<Stroke> strokes) throws IOException {
        int window = Tone.windowFrames(recording.sampleRate());
        float[][] samples = new float[recording.inputs()][window];
        List<Tone> tones = new ArrayList<>();
        for (Stroke stroke : strokes) {
            Span steady = stroke.steady();
            long middle = (long) (steady.from() + steady.to()) * envelope.sliceFrames() / 2;
            long start = Math.max(0, Math.min(recording.frames() - window, middle - window / 2));
            try (SampleStream stream = recording.openAt(start)) {
                int read = stream.read(samples, window);
                float[] own = samples[stroke.input()];
                Arrays.fill(own, read, window, 0);
                tones.add(Tone.of(own, recording.sampleRate(), quiet.noisePower()[stroke.input()]));
            }
        }
        return tones;
    }

    private List<Segment> named(List<Stroke> strokes, List<Tone> tones) {
        List<double[]> decibels = strokes.stream().map(this::levels).toList();
        int[] owners = StringFinder.owners(
                decibels,
                tones.stream().map(Tone::pitch).toList(),
                inputOfString.stream().map(input -> input - 1).toList());
        Segment[] segments = new Segment[strokes.size()];
        for (int string = 0; string < inputOfString.size(); string++) {
            int owner = string;
            int input = inputOfString.get(string) - 1;
            List<Integer> own = IntStream.range(0, owners.length)
                    .filter(i -> owners[i] == owner)
                    .boxed()
                    .toList();
            List<Loudness> loudness = LoudnessClasses.of(
                    own.stream().map(i -> decibels.get(i)[input]).toList());
            for (int k = 0; k < own.size(); k++) {
                Span span = strokes.get(own.get(k)).span();
                double to = Math.min(
                        span.to() * envelope.sliceSeconds(), (double) envelope.frames() / envelope.sampleRate());
                segments[own.get(k)] =
                        new Segment(string + 1, span.from() * envelope.sliceSeconds(), to, loudness.get(k));
            }
        }
        return List.of(segments);
    }

    private double[] levels(Stroke stroke) {
        return IntStream.range(0, envelope.inputs())
                .mapToDouble(input -> Decibels.ofPower(Math.max(
                        envelope.power(
                                input, stroke.steady().from(), stroke.steady().to()),
                        quiet.noisePower()[input])))
                .toArray();
    }

    private void requireTwoStrings(List<Segment> segments) {
        List<Integer> bowed =
                segments.stream().map(Segment::string).distinct().sorted().toList();
        if (bowed.size() < 2) {
            throw new UnusableRecording(
                    "Only string " + Words.list(bowed) + " is bowed in this recording (" + segments.size()
                            + " strokes); to tell strings from their neighbours, bow every open string soft, medium, loud, one after the other");
        }
    }
}
