package rosinbook.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Collectors;
import rosinbook.circuit.WiringFile;

/** Reads what {@code rosinbook wiring} is given: a bare wiring file, or a rig out of an archive. */
final class WiringFiles {
    private static final long MAX_BYTES = 2_000_000;
    private static final byte[] ZIP_START = {'P', 'K', 3, 4};

    private WiringFiles() {}

    /**
     * @param rig {@code id} or {@code id@revision} in an archive; null for a bare file, or for the only rig of an archive
     * @throws IOException with a sentence for the player when it cannot be read as a wiring
     */
    static WiringFile read(Path file, String rig) throws IOException {
        requireFile(file);
        if (isZip(file)) {
            return RigOfArchive.read(file, rig);
        }
        if (rig != null) {
            throw new IOException(
                    "'" + shown(file) + "' is no archive, so it has no rigs to choose from; leave out --rig.");
        }
        return bare(file);
    }

    private static void requireFile(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new IOException("'" + shown(file) + "' is not there, or is no file.");
        }
    }

    /** By its first bytes, whatever it is called. */
    private static boolean isZip(Path file) throws IOException {
        try (InputStream content = Files.newInputStream(file)) {
            return Arrays.equals(content.readNBytes(ZIP_START.length), ZIP_START);
        }
    }

    private static String shown(Path file) {
        return file.getFileName() == null ? file.toString() : file.getFileName().toString();
    }

    private static WiringFile bare(Path file) throws IOException {
        String shown = shown(file);
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
