package rosinbook.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Collectors;
import rosinbook.circuit.Adapter;
import rosinbook.circuit.InstrumentSide;
import rosinbook.circuit.MeterReading;
import rosinbook.circuit.SynthSide;

/**
 * A bare wiring file, version 1: one JSON object.
 *
 * @param format {@code rosinbook wiring}; may be left out
 * @param version 1; may be left out
 * @param instrument connector, openNotes, pickup
 * @param synth connector, controlLines, inputNotes, inputOhms, supplyMilliamps
 * @param adapter routes and parts; when left out one is proposed
 * @param wantedVolts for a proposal: what each control line should get, V, by its key
 * @param readings what the meter showed, by step of the meter plan
 */
record WiringFile(
        String format,
        Integer version,
        InstrumentSide instrument,
        SynthSide synth,
        Adapter adapter,
        Map<String, Double> wantedVolts,
        Map<String, MeterReading> readings) {
    private static final long MAX_BYTES = 2_000_000;

    WiringFile {
        if (format != null && !format.equals("rosinbook wiring")) {
            throw new IllegalArgumentException("format is not 'rosinbook wiring'; is this another kind of file?");
        }
        if (version != null && version != 1) {
            throw new IllegalArgumentException("version is " + version + "; this program reads version 1");
        }
        if (instrument == null || synth == null) {
            throw new IllegalArgumentException(
                    (instrument == null ? "instrument" : "synth") + " is missing; give its connector with its pins");
        }
        wantedVolts = wantedVolts == null ? Map.of() : wantedVolts;
        wantedVolts.forEach((line, volts) -> {
            if (volts == null || !(Math.abs(volts) <= 60)) {
                throw new IllegalArgumentException(
                        "wantedVolts of '" + line + "' is " + volts + "; give volts from -60 to 60");
            }
        });
        readings = readings == null ? Map.of() : readings;
    }

    /** @throws IOException with a sentence for the player when the file cannot be read as a wiring */
    static WiringFile read(Path file) throws IOException {
        String shown = file.getFileName() == null
                ? file.toString()
                : file.getFileName().toString();
        if (!Files.isRegularFile(file)) {
            throw new IOException("'" + shown + "' is not there, or is no file.");
        }
        if (Files.size(file) > MAX_BYTES) {
            throw new IOException("'" + shown + "' has more than 2 MB; a wiring is far smaller.");
        }
        byte[] content = Files.readAllBytes(file);
        try {
            WiringFile wiring = Answers.JSON.readValue(content, WiringFile.class);
            if (wiring == null) {
                throw new IOException("'" + shown + "' holds null instead of a wiring.");
            }
            return wiring;
        } catch (JsonMappingException problem) {
            throw new IOException("'" + shown + "': " + sentence(problem), problem);
        } catch (JsonProcessingException problem) {
            var place = problem.getLocation();
            throw new IOException(
                    "'" + shown + "' is no JSON: it breaks off or goes wrong at line " + place.getLineNr() + ", column "
                            + place.getColumnNr() + ".",
                    problem);
        }
    }

    private static String sentence(JsonMappingException problem) {
        String at = problem.getPath().stream()
                .map(step -> step.getFieldName() == null ? String.valueOf(step.getIndex()) : step.getFieldName())
                .map(step -> step.length() <= 40 ? step : step.substring(0, 40) + "…")
                .collect(Collectors.joining("/"));
        String where = at.isEmpty() ? "" : "at " + at + ": ";
        if (problem instanceof UnrecognizedPropertyException unknown) {
            return where + "that field is not known here; known are "
                    + unknown.getKnownPropertyIds().stream()
                            .map(String::valueOf)
                            .sorted()
                            .collect(Collectors.joining(", "))
                    + ".";
        }
        if (problem.getCause() instanceof IllegalArgumentException own) {
            return where + own.getMessage() + ".";
        }
        String first = problem.getOriginalMessage().lines().findFirst().orElse("it has the wrong shape");
        return where + "a value has the wrong shape: "
                + (first.length() <= 160 ? first : first.substring(0, 160) + "…");
    }
}
