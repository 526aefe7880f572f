package rosinbook.level;

import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rosinbook.pitch.Note;

/** What one mono file of one string and loudness gives. */
record FileFigures(MeasuredSegment segment, InputReport input) {
    static FileFigures of(StrokeFile file, LevelOptions options) throws IOException {
        WavRecording recording = file.recording();
        double floor = recording.samples().floorDbfs();
        Envelope envelope = Envelope.of(recording, Progress.NONE);
        if (envelope.totals(0).peak() == 0) {
            throw new UnusableRecording(
                    "Every sample of '" + recording.name() + "' is 0; check that the right input was recorded");
        }
        QuietParts quiet = QuietParts.find(envelope, Decibels.toPower(floor));
        List<Stroke> found = StrokeFinder.find(envelope, quiet.noisePower(), List.of(0));
        // Without a pause before or after it nothing stands out: then all of the file is the stroke, and its noise
        // unknown.
        List<Stroke> strokes =
                found.isEmpty() ? List.of(Stroke.of(envelope, new Span(0, envelope.slices()), 0)) : found;
        double noiseDb = found.isEmpty() ? floor : Decibels.ofPower(quiet.noisePower()[0]);
        double rms = Decibels.ofPower(strokes.stream()
                .mapToDouble(stroke -> envelope.power(
                        0, stroke.steady().from(), stroke.steady().to()))
                .average()
                .orElseThrow());
        double peak = Decibels.ofAmplitude(envelope.totals(0).peak());
        Tone tone = tone(recording, envelope, strokes.get(0), Decibels.toPower(noiseDb));
        Optional<Hum> hum = found.isEmpty()
                ? Optional.empty()
                : QuietListening.hum(recording, envelope, quiet, options.mains())
                        .map(all -> all.get(0));
        MeasuredSegment segment = new MeasuredSegment(
                file.string(),
                note(file, options),
                strokes.get(0).span().from() * envelope.sliceSeconds(),
                strokes.get(strokes.size() - 1).span().to() * envelope.sliceSeconds(),
                file.loudness(),
                rms,
                peak,
                peak - rms,
                rms - noiseDb,
                tone.pitch().clarity() >= 0.8 ? tone.pitch().hertz() : null,
                List.of(rms));
        return new FileFigures(
                segment, report(file.string(), envelope.totals(0), noiseDb, rms, hum, tone.tiltDbPerOctave()));
    }

    private static InputReport report(
            int input, InputTotals totals, double noiseDb, double rmsDb, Optional<Hum> hum, OptionalDouble tilt) {
        boolean standsOut = hum.map(Hum::standsOut).orElse(false);
        double all = Decibels.ofPower(totals.meanSquare());
        double peak = Decibels.ofAmplitude(totals.peak());
        return new InputReport(
                input,
                noiseDb,
                hum.map(found -> Decibels.ofPower(found.power())).orElse(null),
                standsOut,
                standsOut ? (double) hum.get().mainsHertz() * hum.get().strongestHarmonic() : null,
                peak,
                all,
                all + Decibels.AES17_OFFSET,
                peak - all,
                rmsDb - noiseDb,
                totals.clippedSamples(),
                totals.mean(),
                tilt.isPresent() ? tilt.getAsDouble() : null);
    }

    /** One report for all files of a string: the loudest file's, with every file's clipped samples and the quietest noise. */
    static InputReport together(List<FileFigures> figures) {
        InputReport loudest = figures.stream()
                .max(Comparator.comparingDouble(one -> one.segment().rmsDbfs()))
                .orElseThrow()
                .input();
        InputReport quietest = figures.stream()
                .map(FileFigures::input)
                .min(Comparator.comparingDouble(InputReport::noiseDbfs))
                .orElseThrow();
        return new InputReport(
                loudest.input(),
                quietest.noiseDbfs(),
                quietest.humDbfs(),
                quietest.humStandsOut(),
                quietest.strongestHumHertz(),
                figures.stream()
                        .mapToDouble(one -> one.input().peakDbfs())
                        .max()
                        .orElseThrow(),
                loudest.rmsDbfs(),
                loudest.rmsAes17Dbfs(),
                loudest.crestDb(),
                loudest.signalToNoiseDb() + loudest.noiseDbfs() - quietest.noiseDbfs(),
                figures.stream().mapToLong(one -> one.input().clippedSamples()).sum(),
                loudest.dcOffset(),
                loudest.tiltDbPerOctave());
    }

    private static Tone tone(WavRecording recording, Envelope envelope, Stroke stroke, double noisePower)
            throws IOException {
        int window = Tone.windowFrames(recording.sampleRate());
        float[][] samples = new float[1][window];
        long middle = (long) (stroke.steady().from() + stroke.steady().to()) * envelope.sliceFrames() / 2;
        try (SampleStream stream =
                recording.openAt(Math.max(0, Math.min(recording.frames() - window, middle - window / 2)))) {
            stream.read(samples, window);
        }
        return Tone.of(samples[0], recording.sampleRate(), noisePower);
    }

    private static Note note(StrokeFile file, LevelOptions options) {
        return file.string() <= options.openNotes().size() ? options.openNotes().get(file.string() - 1) : null;
    }
}
