package rosinbook.cli;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import rosinbook.take.Cleaner;
import rosinbook.take.Cleaning;
import rosinbook.take.Fault;
import rosinbook.take.MidiExport;
import rosinbook.take.MusicXmlExport;
import rosinbook.take.NoteScore;
import rosinbook.take.StringReport;
import rosinbook.take.Take;
import rosinbook.take.TakeReader;
import rosinbook.take.TakeReport;
import rosinbook.take.Tuning;
import rosinbook.take.smf.MidiFile;
import rosinbook.take.smf.MidiFormatException;

/** Reads a take, counts its faults, and gives back what was played. */
@Command(
        name = "take",
        mixinStandardHelpOptions = true,
        description = "Finds the faults of a take (a MIDI file of your playing) and gives back what was played.")
final class TakeCommand implements Callable<Integer> {
    private static final ObjectMapper JSON = JsonMapper.builder()
            .addModule(new Jdk8Module())
            .defaultPropertyInclusion(
                    JsonInclude.Value.construct(JsonInclude.Include.NON_ABSENT, JsonInclude.Include.ALWAYS))
            .enable(SerializationFeature.INDENT_OUTPUT)
            .build();

    private enum GlideStyle {
        bend,
        plain
    }

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE.mid", description = "The take, a Standard MIDI File.")
    private Path file;

    @Option(names = "--strings", paramLabel = "NOTES", description = "Open strings, highest first, like E5,A4,D4,G3.")
    private String strings;

    @Option(names = "--base-channel", paramLabel = "1-16", description = "The channel of the first string.")
    private Integer baseChannel;

    @Option(names = "--clean", paramLabel = "OUT.mid", description = "Write the cleaned take as MIDI.")
    private Path clean;

    @Option(
            names = "--glide",
            paramLabel = "bend|plain",
            defaultValue = "bend",
            description = "Slides as pitch bend, or as two plain notes (default: ${DEFAULT-VALUE}).")
    private GlideStyle glide;

    @Option(names = "--musicxml", paramLabel = "OUT.musicxml", description = "Write the cleaned take as sheet music.")
    private Path musicXml;

    @Option(names = "--tempo", paramLabel = "BPM", description = "Tempo of the sheet music (default: estimated).")
    private Double tempoBpm;

    @Option(names = "--truth", paramLabel = "TRUTH.mid", description = "What was really played, to score against.")
    private Path truth;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Override
    public Integer call() {
        FileToWrite.checkApart(Stream.of(file, truth), Stream.of(clean, musicXml));
        Take take = read(file, TakeReader.of(tuning(), channel()));
        Optional<Take> played = Optional.ofNullable(truth).map(path -> read(path, TakeReader.like(take)));
        Cleaning cleaning = Cleaner.STANDARD.clean(take);
        TakeReport report = TakeReport.of(cleaning, played);
        if (clean != null) {
            write(clean, new MidiExport(glide == GlideStyle.bend).toBytes(cleaning));
        }
        if (musicXml != null) {
            write(musicXml, sheet(cleaning).getBytes(StandardCharsets.UTF_8));
        }
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.println(json(report));
        } else {
            print(report, out);
        }
        out.flush();
        return 0;
    }

    private Optional<Tuning> tuning() {
        try {
            return Optional.ofNullable(strings).map(Tuning::parse);
        } catch (IllegalArgumentException unknown) {
            throw wrong("--strings: " + unknown.getMessage());
        }
    }

    private OptionalInt channel() {
        if (baseChannel == null) {
            return OptionalInt.empty();
        }
        if (baseChannel < 1 || baseChannel > 16) {
            throw wrong("--base-channel is " + baseChannel + "; give 1 to 16");
        }
        return OptionalInt.of(baseChannel);
    }

    private Take read(Path path, TakeReader reader) {
        try {
            if (Files.size(path) > MidiFile.MAX_BYTES) {
                throw wrong(path + " is larger than " + MidiFile.MAX_BYTES
                        + " bytes; give a MIDI file, not a recording of sound");
            }
            return reader.read(Files.readAllBytes(path));
        } catch (MidiFormatException broken) {
            throw wrong(path + " is not a readable MIDI file: " + broken.getMessage());
        } catch (IllegalArgumentException unfit) {
            throw wrong(path + ": " + unfit.getMessage());
        } catch (NoSuchFileException missing) {
            throw wrong("There is no file " + path + ".");
        } catch (IOException unreadable) {
            throw wrong(path + " cannot be read: " + unreadable.getMessage());
        }
    }

    private String sheet(Cleaning cleaning) {
        try {
            OptionalDouble tempo = tempoBpm == null ? OptionalDouble.empty() : OptionalDouble.of(tempoBpm);
            return new MusicXmlExport(tempo, MusicXmlExport.STANDARD.stepsPerQuarter(), false).toXml(cleaning);
        } catch (IllegalArgumentException unfit) {
            throw wrong("--musicxml: " + unfit.getMessage());
        }
    }

    private void write(Path path, byte[] bytes) {
        try {
            FileToWrite.write(path, bytes);
        } catch (IOException unwritable) {
            throw wrong(path + " cannot be written: " + unwritable.getMessage());
        }
    }

    private static IllegalArgumentException wrong(String sentence) {
        return new IllegalArgumentException(sentence);
    }

    private static String json(TakeReport report) {
        try {
            return JSON.writeValueAsString(TakeJson.of(report));
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException("a report is always JSON", impossible);
        }
    }

    private static void print(TakeReport report, PrintWriter out) {
        out.printf(
                Locale.ROOT,
                "%d notes heard, %d kept, %d faults in %.1f s. Tracking %.0f of 100.%n",
                report.notes().heard(),
                report.notes().kept(),
                report.faults().size(),
                report.seconds(),
                report.tracking().percent());
        for (StringReport string : report.perString()) {
            out.printf(
                    "String %d (%s): %d notes, faults %s%n",
                    string.string(), string.open(), string.notes(), string.faults());
        }
        for (Fault fault : report.faults()) {
            out.printf(
                    Locale.ROOT,
                    "%8.3f s  string %d  %-4s %s: %s%n",
                    fault.atSeconds(),
                    fault.string(),
                    fault.note(),
                    fault.kind().label(),
                    fault.because());
        }
        report.scoreRaw().ifPresent(scores -> print("As it came", scores.onset(), scores.onsetOffset(), out));
        report.score().ifPresent(scores -> print("Cleaned", scores.onset(), scores.onsetOffset(), out));
        List<String> sentences = new ArrayList<>(report.remarks());
        sentences.addAll(report.advice());
        sentences.forEach(out::println);
    }

    private static void print(String what, NoteScore onset, NoteScore onsetOffset, PrintWriter out) {
        out.printf(Locale.ROOT, "%s: F1 %.3f by pitch and start, %.3f with ends%n", what, onset.f1(), onsetOffset.f1());
    }
}
