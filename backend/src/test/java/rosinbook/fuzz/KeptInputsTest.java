package rosinbook.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every input that is kept, and others close to it, by fixed seeds. */
class KeptInputsTest {
    private static final int CHANGES = 800;

    /** The parsers, as the folders of their inputs are called. */
    enum Door {
        MIDI(Parsers::midi),
        WAV(Parsers::wav),
        ARCHIVE(Parsers::archive),
        JSON(Parsers::json);

        private final Reading reading;

        Door(Reading reading) {
            this.reading = reading;
        }

        List<byte[]> kept() throws IOException {
            Path folder = Path.of(
                    "src/test/resources/rosinbook/fuzz/ParsersFuzzInputs", name().toLowerCase(java.util.Locale.ROOT));
            List<Path> files;
            try (Stream<Path> all = Files.list(folder)) {
                files = all.sorted().toList();
            }
            List<byte[]> kept = new java.util.ArrayList<>();
            for (Path file : files) {
                kept.add(Files.readAllBytes(file));
            }
            return kept;
        }
    }

    @FunctionalInterface
    private interface Reading {
        void read(byte[] bytes) throws IOException;
    }

    @ParameterizedTest
    @EnumSource
    void what_is_kept_is_read_or_refused_in_words(Door door) throws IOException {
        List<byte[]> kept = door.kept();
        assertFalse(kept.isEmpty());
        for (byte[] input : kept) {
            door.reading.read(input);
        }
    }

    @ParameterizedTest
    @EnumSource
    void so_is_what_is_close_to_it(Door door) throws IOException {
        List<byte[]> kept = door.kept();
        for (long seed = 0; seed < CHANGES; seed++) {
            Odd odd = new Odd(seed);
            byte[] input = odd.changed(odd.any(kept));
            try {
                door.reading.read(input);
            } catch (AssertionError | RuntimeException problem) {
                throw new AssertionError(door + " with seed " + seed + " of " + CHANGES, problem);
            }
        }
    }
}
