package rosinbook.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import rosinbook.level.LevelBench;
import rosinbook.level.LevelMeasurement;
import rosinbook.level.LevelOptions;
import rosinbook.level.LevelReport;
import rosinbook.level.LevelsJson;
import rosinbook.level.Loudness;
import rosinbook.level.Mains;
import rosinbook.level.Progress;
import rosinbook.level.Segment;
import rosinbook.level.SensitivityAdvice;
import rosinbook.level.StrokeFile;
import rosinbook.level.UnreadableWav;
import rosinbook.level.UnusableRecording;
import rosinbook.level.WavRecording;
import rosinbook.pitch.Note;

/** {@code rosinbook levels}: measures the strings of a recording. */
@Command(
        name = "levels",
        mixinStandardHelpOptions = true,
        description = {
            "Measures how loud every string is on every input: noise, hum, leaks, and where a trigger fits.",
            "Record two seconds of quiet, then bow each open string soft, medium, loud, with a pause between strokes."
        })
final class LevelsCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(
            arity = "0..8",
            paramLabel = "FILE.wav",
            description = "One file with a channel per input, or one mono file per input.")
    private List<Path> files = new ArrayList<>();

    @Option(
            names = "--stroke",
            paramLabel = "1-soft=FILE.wav",
            description =
                    "A mono file of one string and loudness (soft, medium, loud), in place of FILE.wav; may be repeated.")
    private Map<String, Path> strokeFiles = Map.of();

    @Option(
            names = "--strings",
            split = ",",
            paramLabel = "NOTE",
            description = "Open notes from string 1 (highest) on, such as E5,A4,D4,G3.")
    private List<String> strings = List.of();

    @Option(
            names = "--inputs",
            split = ",",
            paramLabel = "INPUT",
            description = "Input that hears string 1, string 2 and so on; otherwise input k hears string k.")
    private List<Integer> inputs = List.of();

    @Option(
            names = "--mains",
            paramLabel = "HERTZ",
            description = "Mains frequency, 50 or 60; otherwise whichever is heard more.")
    private Integer mainsHertz;

    @Option(
            names = "--margin",
            paramLabel = "DB",
            description = "Room on either side of a trigger window in dB; ${DEFAULT-VALUE} unless told otherwise.")
    private double marginDb = 3;

    @Option(
            names = "--segments",
            paramLabel = "FILE.json",
            description = "Which string is bowed when: a list as this command prints it, corrected by hand.")
    private Path segmentsFile;

    @ArgGroup(exclusive = false, heading = "%nAdvice in the synth's own scale:%n")
    private SensitivityOptions sensitivity;

    @Option(names = "--json", description = "Print JSON.")
    private boolean isJson;

    @Option(names = "--waveform", description = "With --json: add a thinned waveform for drawing.")
    private boolean isWithWaveform;

    @Override
    public Integer call() {
        try {
            LevelMeasurement measurement = measure();
            print(LevelReport.of(measurement, advice(measurement)));
            return measurement.warnings().isEmpty() ? 0 : 1;
        } catch (NoSuchFileException problem) {
            return refuse("There is no file '" + problem.getFile() + "'");
        } catch (JsonProcessingException problem) {
            return refuse("'" + segmentsFile + "' is no list of segments: " + problem.getOriginalMessage());
        } catch (UnreadableWav | UnusableRecording | IllegalArgumentException problem) {
            return refuse(problem.getMessage());
        } catch (IOException problem) {
            return refuse("A file cannot be read: " + problem.getMessage());
        }
    }

    private int refuse(String reason) {
        spec.commandLine().getErr().println("rosinbook levels: " + reason);
        return 2;
    }

    private LevelMeasurement measure() throws IOException {
        if (files.isEmpty() == strokeFiles.isEmpty()) {
            throw new IllegalArgumentException("give either FILE.wav or --stroke files");
        }
        if (files.isEmpty()) {
            return LevelBench.measureStrokeFiles(strokeFiles(), options(), Progress.NONE);
        }
        return LevelBench.measure(LevelBench.open(files), options(), Progress.NONE);
    }

    private LevelOptions options() throws IOException {
        return LevelOptions.usual()
                .withOpenNotes(strings.stream().map(Note::parse).toList())
                .withInputOfString(inputs)
                .withMains(mainsHertz == null ? Mains.FIND : Mains.of(mainsHertz))
                .withMarginDb(marginDb)
                .withSegments(segmentsFile == null ? List.of() : readSegments());
    }

    private List<Segment> readSegments() throws IOException {
        ObjectMapper mapper = new ObjectMapper().disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);
        JsonNode root = mapper.readTree(segmentsFile.toFile());
        JsonNode list = root.has("segments") ? root.get("segments") : root;
        Segment[] segments = mapper.treeToValue(list, Segment[].class);
        if (segments == null || Arrays.asList(segments).contains(null)) {
            throw new IllegalArgumentException(
                    "'" + segmentsFile + "' is no list of segments: null stands where one should");
        }
        return List.of(segments);
    }

    private List<StrokeFile> strokeFiles() throws IOException {
        List<StrokeFile> strokes = new ArrayList<>();
        for (Map.Entry<String, Path> entry : strokeFiles.entrySet()) {
            String[] parts = entry.getKey().split("-", 2);
            if (parts.length < 2 || !parts[0].matches("[1-8]")) {
                throw new IllegalArgumentException(
                        "write --stroke 1-soft=FILE.wav, with the string's number and its loudness");
            }
            strokes.add(new StrokeFile(
                    Integer.parseInt(parts[0]), Loudness.parse(parts[1]), WavRecording.open(entry.getValue())));
        }
        return strokes;
    }

    private List<SensitivityAdvice> advice(LevelMeasurement measurement) {
        if (sensitivity == null) {
            return List.of();
        }
        return SensitivityAdvice.of(
                measurement.windows(),
                sensitivity.scale(),
                sensitivity.thresholdDbfs == null
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(sensitivity.thresholdDbfs),
                measurement.peakDbfsByString());
    }

    private void print(LevelReport report) throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        if (isJson) {
            out.println(LevelsJson.MAPPER.writeValueAsString(isWithWaveform ? report : report.withoutWaveform()));
        } else {
            out.print(LevelsText.of(report));
        }
        out.flush();
    }
}
