package rosinbook.level;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import rosinbook.pitch.Note;

/** Puts the figures of a recording together once its strokes are known. */
final class MeasurementAssembler {
    private final Recording recording;
    private final LevelOptions options;
    private final List<Integer> inputOfString;
    private final Envelope envelope;
    private final QuietParts quiet;
    private final Optional<List<Hum>> hum;

    MeasurementAssembler(
            Recording recording,
            LevelOptions options,
            List<Integer> inputOfString,
            Envelope envelope,
            QuietParts quiet,
            Optional<List<Hum>> hum) {
        this.recording = recording;
        this.options = options;
        this.inputOfString = inputOfString;
        this.envelope = envelope;
        this.quiet = quiet;
        this.hum = hum;
    }

    LevelMeasurement assemble(List<Segment> segments, List<Stroke> strokes, List<Tone> tones) {
        List<MeasuredSegment> measured = new ArrayList<>();
        for (int i = 0; i < segments.size(); i++) {
            measured.add(segment(segments.get(i), strokes.get(i), tones.get(i)));
        }
        Levels levels = levels(measured);
        List<InputReport> inputs = new ArrayList<>();
        for (int input = 0; input < envelope.inputs(); input++) {
            inputs.add(input(input, measured, tilt(input, segments, tones)));
        }
        Crosstalk crosstalk = Crosstalk.of(levels);
        List<TriggerWindow> windows = TriggerWindow.of(levels, options.marginDb());
        Remarks remarks = new Remarks();
        remarks.onStrings(levels, measured, options);
        remarks.onWindows(windows);
        remarks.onInputs(inputs, quiet.seconds(envelope));
        remarks.onCrosstalk(crosstalk);
        return new LevelMeasurement(
                levels,
                hum.map(all -> all.get(0).mainsHertz()).orElse(0),
                inputs,
                measured,
                crosstalk,
                windows,
                StringRange.ofAll(options.openNotes(), options.referenceHertz()),
                Waveform.of(envelope, options.waveformPoints()),
                remarks.warnings(),
                remarks.notes());
    }

    private MeasuredSegment segment(Segment segment, Stroke stroke, Tone tone) {
        int own = inputOfString.get(segment.string() - 1) - 1;
        List<Double> byInput = IntStream.range(0, envelope.inputs())
                .mapToObj(input -> floored(envelope.power(
                        input, stroke.steady().from(), stroke.steady().to())))
                .toList();
        double rms = byInput.get(own);
        double peak = Decibels.ofAmplitude(Math.max(
                envelope.peak(own, stroke.span().from(), stroke.span().to()), Math.sqrt(Decibels.toPower(rms))));
        Note note = options.openNotes().isEmpty() ? null : options.openNotes().get(segment.string() - 1);
        return new MeasuredSegment(
                segment.string(),
                note,
                segment.fromSeconds(),
                segment.toSeconds(),
                segment.loudness(),
                rms,
                peak,
                peak - rms,
                rms - Decibels.ofPower(quiet.noisePower()[own]),
                tone.pitch().clarity() >= 0.8 ? tone.pitch().hertz() : null,
                byInput);
    }

    private Levels levels(List<MeasuredSegment> segments) {
        List<LevelReading> readings = new ArrayList<>();
        for (MeasuredSegment segment : segments) {
            for (int input = 1; input <= envelope.inputs(); input++) {
                readings.add(new LevelReading(
                        segment.string(),
                        segment.loudness(),
                        input,
                        segment.rmsDbfsByInput().get(input - 1)));
            }
        }
        List<Double> noise = IntStream.range(0, envelope.inputs())
                .mapToObj(input -> Decibels.ofPower(quiet.noisePower()[input]))
                .toList();
        return new Levels(inputOfString, envelope.inputs(), readings, noise, LevelUnit.DBFS);
    }

    private InputReport input(int input, List<MeasuredSegment> segments, Double tilt) {
        InputTotals totals = envelope.totals(input);
        double noise = Decibels.ofPower(quiet.noisePower()[input]);
        double peak = floored(totals.peak() * totals.peak());
        double rms = floored(totals.meanSquare());
        OptionalDouble loudest = segments.stream()
                .filter(segment -> inputOfString.get(segment.string() - 1) == input + 1)
                .mapToDouble(MeasuredSegment::rmsDbfs)
                .max();
        Hum own = hum.map(all -> all.get(input)).orElse(null);
        boolean standsOut = own != null && own.standsOut();
        return new InputReport(
                input + 1,
                noise,
                own == null ? null : floored(own.power()),
                standsOut,
                standsOut ? (double) own.mainsHertz() * own.strongestHarmonic() : null,
                peak,
                rms,
                rms + Decibels.AES17_OFFSET,
                peak - rms,
                loudest.isPresent() ? loudest.getAsDouble() - noise : null,
                totals.clippedSamples(),
                totals.mean(),
                tilt);
    }

    /** Mean over the strokes of the input's own string. */
    private Double tilt(int input, List<Segment> segments, List<Tone> tones) {
        OptionalDouble mean = IntStream.range(0, tones.size())
                .filter(i -> inputOfString.get(segments.get(i).string() - 1) == input + 1)
                .mapToObj(i -> tones.get(i).tiltDbPerOctave())
                .flatMapToDouble(OptionalDouble::stream)
                .average();
        return mean.isPresent() ? mean.getAsDouble() : null;
    }

    /** Decibels, but nothing below what the file's format can tell. */
    private double floored(double power) {
        return Math.max(Decibels.ofPower(power), recording.samples().floorDbfs());
    }
}
