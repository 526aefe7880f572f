package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.Tuple.Tuple2;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import rosinbook.limit.PastLimit;

/** Whatever the bytes, a file is either measured or refused in words. */
class WavReaderFuzzTest {
    @Property(tries = 1500, seed = "41")
    void a_damaged_file_is_measured_or_refused_in_words(
            @ForAll SampleFormat format,
            @ForAll WavWriter.Header header,
            @ForAll @IntRange(min = 1, max = 8) int channels,
            @ForAll @Size(max = 4) List<@From("changes") Tuple2<Integer, Byte>> changes,
            @ForAll @IntRange(max = 3000) int length)
            throws IOException {
        byte[] file = file(format, header, channels);
        for (Tuple2<Integer, Byte> change : changes) {
            file[change.get1()] = change.get2();
        }
        measureOrRefuse(length > 1000 ? file : Arrays.copyOf(file, Math.min(file.length, length)));
    }

    @Property(tries = 500, seed = "42")
    void random_bytes_are_refused_in_words(@ForAll byte[] bytes) throws IOException {
        assertFalse(measureOrRefuse(bytes));
    }

    /** A place in the header (all kinds have at least 44 bytes of it) and what to write there, often an extreme. */
    @Provide
    Arbitrary<Tuple2<Integer, Byte>> changes() {
        return Arbitraries.integers().between(0, 103).flatMap(at -> Arbitraries.bytes()
                .edgeCases(edges -> edges.add((byte) 0xFF))
                .map(to -> Tuple.of(at, to)));
    }

    private static byte[] file(SampleFormat format, WavWriter.Header header, int channels) {
        double[][] samples = new double[channels][800];
        for (int i = 0; i < 800; i++) {
            samples[i % channels][i] = Math.sin(i * 0.3) * 0.5;
        }
        return WavWriter.bytes(samples, 8_000, format, header);
    }

    /** Whether the file was measured; anything but a measurement or a sentence fails the test. */
    private static boolean measureOrRefuse(byte[] bytes) throws IOException {
        Path file = Files.createTempFile("fuzz", ".wav");
        try {
            Files.write(file, bytes);
            LevelBench.measure(WavRecording.open(file), LevelOptions.usual(), Progress.NONE);
            return true;
        } catch (UnreadableWav | UnusableRecording | PastLimit refused) {
            assertTrue(refused.getMessage().length() > 20, refused.getMessage());
            return false;
        } finally {
            Files.delete(file);
        }
    }
}
