package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

class WavRecordingTest {
    @TempDir
    Path folder;

    static Stream<Arguments> kinds() {
        return Arrays.stream(SampleFormat.values()).flatMap(format -> Arrays.stream(WavWriter.Header.values())
                .flatMap(header -> Stream.of(1, 2, 6, 8).map(channels -> Arguments.of(format, header, channels))));
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void every_kind_reads_back_what_was_written(SampleFormat format, WavWriter.Header header, int channels)
            throws IOException {
        double[][] written = noise(channels, 5000);
        WavRecording recording =
                WavRecording.open(WavWriter.write(folder.resolve("kind.wav"), written, 48_000, format, header));
        assertEquals(channels, recording.inputs());
        assertEquals(48_000, recording.sampleRate());
        assertEquals(5000, recording.frames());
        assertEquals(format, recording.samples());
        float[][] read = new float[channels][5001];
        try (SampleStream stream = recording.openAt(0)) {
            assertEquals(5000, stream.read(read, 5001));
            assertEquals(0, stream.read(read, 5001));
        }
        double step = format == SampleFormat.INT16 ? 0x1p-16 : 0x1p-23;
        for (int channel = 0; channel < channels; channel++) {
            for (int i = 0; i < 5000; i++) {
                assertEquals(written[channel][i], read[channel][i], step);
            }
        }
    }

    @Test
    void reading_may_start_anywhere() throws IOException {
        double[][] written = noise(3, 1000);
        WavRecording recording = WavRecording.open(WavWriter.write(folder.resolve("from.wav"), written, 8_000));
        float[][] read = new float[3][10];
        try (SampleStream stream = recording.openAt(700)) {
            assertEquals(10, stream.read(read, 10));
        }
        assertEquals(written[2][709], read[2][9], 1e-6);
    }

    @Test
    void a_file_written_to_a_pipe_with_its_length_unknown_is_read_to_the_end() throws IOException {
        byte[] file = bytes(2, 100);
        putInt(file, 4, -1);
        putInt(file, 40, -1);
        assertEquals(100, open(file).frames());
    }

    @Test
    void unknown_chunks_of_odd_length_are_skipped() throws IOException {
        byte[] file = bytes(2, 100);
        ByteBuffer longer = ByteBuffer.allocate(file.length + 12).order(ByteOrder.LITTLE_ENDIAN);
        longer.put(file, 0, 12)
                .put("note".getBytes(StandardCharsets.US_ASCII))
                .putInt(3)
                .putInt(0)
                .put(file, 12, file.length - 12);
        assertEquals(100, open(longer.array()).frames());
    }

    @Test
    void mono_files_are_read_side_by_side_and_the_shortest_ends_them() throws IOException {
        double[][] written = noise(2, 1000);
        Path first = WavWriter.write(folder.resolve("1.wav"), new double[][] {written[0]}, 44_100);
        Path second = WavWriter.write(folder.resolve("2.wav"), new double[][] {Arrays.copyOf(written[1], 900)}, 44_100);
        Recording both = LevelBench.open(List.of(first, second));
        assertEquals(900, both.frames());
        float[][] read = new float[2][1000];
        try (SampleStream stream = both.openAt(100)) {
            assertEquals(800, stream.read(read, 1000));
        }
        assertEquals(written[1][899], read[1][799], 1e-6);
    }

    @Test
    void mono_files_of_different_rates_are_refused() throws IOException {
        Path first = WavWriter.write(folder.resolve("1.wav"), noise(1, 100), 44_100);
        Path second = WavWriter.write(folder.resolve("2.wav"), noise(1, 100), 48_000);
        var problem = assertThrows(IllegalArgumentException.class, () -> LevelBench.open(List.of(first, second)));
        assertTrue(problem.getMessage().contains("'2.wav' has 48000 samples a second, the first file 44100"));
    }

    /** Offsets in the classic header: 0 RIFF, 8 WAVE, 12 fmt, 20 coding, 22 channels, 24 rate, 32 frame, 34 bits, 36 data. */
    static Stream<Arguments> damages() {
        return Stream.of(
                damage("an empty file", file -> new byte[0], 0, "has 0 bytes"),
                damage("shorter than a header", file -> Arrays.copyOf(file, 11), 0, "has 11 bytes"),
                damage("no WAV at all", file -> put(file, 0, "fLaC"), 0, "a FLAC file"),
                damage("big-endian", file -> put(file, 0, "RIFX"), 0, "big-endian"),
                damage("RIFF of another kind", file -> put(file, 8, "AVI "), 8, "holds \"AVI \""),
                damage("no format", file -> put(file, 12, "junk"), 36, "before any \"fmt \""),
                damage("no data", file -> put(file, 36, "junk"), 444, "no \"data\" chunk"),
                damage("compressed", file -> putShort(file, 20, 17), 20, "format number 17"),
                damage("zero channels", file -> putShort(file, 22, 0), 22, "0 channels"),
                damage("rate just too low", file -> putInt(file, 24, 7_999), 24, "7999 samples a second"),
                damage("frame that does not fit", file -> putShort(file, 32, 5), 32, "take 4 bytes, but it says 5"),
                damage("8 bits", file -> putShort(file, 34, 8), 34, "8 bits"),
                damage("64 bit float", file -> putShort(putShort(file, 34, 64), 20, 3), 34, "64 bits per float"),
                damage("short format", file -> putInt(file, 16, 14), 20, "has 14 bytes"),
                damage("extensible without the rest", file -> putShort(file, 20, 0xFFFE), 20, "takes 40 bytes"),
                damage("one byte missing", file -> Arrays.copyOf(file, 443), 443, "promises 400 bytes"),
                damage("data half a frame long", file -> putInt(file, 40, 398), 36, "no multiple of 4"),
                damage("data of length 0", file -> putInt(file, 40, 0), 36, "no samples at all, and 400 bytes follow"),
                damage(
                        "chunk beyond the end",
                        file -> putInt(put(file, 36, "junk"), 40, 1 << 30),
                        36,
                        "only 400 bytes follow"),
                damage("RF64 without its lengths", file -> putInt(put(file, 0, "RF64"), 40, -1), 36, "\"ds64\""));
    }

    @Test
    void more_than_is_read_is_refused_by_the_name_of_its_limit() {
        assertPastLimit(Limit.CHANNELS, putShort(bytes(2, 100), 22, 9), "9 channels");
        assertPastLimit(Limit.SAMPLE_RATE, putInt(bytes(2, 100), 24, 192_001), "192 001 samples a second");
        assertPastLimit(Limit.SAMPLE_RATE, putInt(bytes(2, 100), 24, -2), "4 294 967 294 samples a second");
        byte[] chunks = bytes(2, 100);
        byte[] many = Arrays.copyOf(chunks, 12 + 8 * 10_001);
        for (int at = 12; at < many.length; at += 8) {
            putInt(put(many, at, "junk"), at + 4, 0);
        }
        assertPastLimit(Limit.WAV_CHUNKS, many, "10 000 chunks");
    }

    @Test
    void a_recording_of_more_than_four_hours_is_refused_by_its_header() throws IOException {
        Path long_ = folder.resolve("long.wav");
        Files.write(long_, putInt(bytes(2, 100), 24, 8_000));
        long dataBytes = 4L * 8_000 * (4 * 3600 + 1);
        try (RandomAccessFile file = new RandomAccessFile(long_.toFile(), "rw")) {
            file.setLength(44 + dataBytes);
            file.seek(40);
            file.writeInt(Integer.reverseBytes((int) dataBytes));
        }
        PastLimit problem = assertThrows(PastLimit.class, () -> WavRecording.open(long_));
        assertEquals(Limit.RECORDING_SECONDS, problem.limit());
    }

    private void assertPastLimit(Limit limit, byte[] file, String message) {
        PastLimit problem = assertThrows(PastLimit.class, () -> open(file));
        assertEquals(limit, problem.limit());
        assertTrue(problem.getMessage().contains(message), problem.getMessage());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("damages")
    void a_damaged_file_is_refused_with_what_and_where(
            String what, UnaryOperator<byte[]> damage, long offset, String message) {
        byte[] file = damage.apply(bytes(2, 100));
        UnreadableWav problem = assertThrows(UnreadableWav.class, () -> open(file));
        assertTrue(problem.getMessage().contains(message), problem.getMessage());
        assertEquals(offset, problem.offsetBytes(), problem.getMessage());
    }

    @Test
    void a_long_file_that_lies_about_its_length_is_refused() {
        byte[] file = WavWriter.bytes(noise(2, 100), 48_000, SampleFormat.INT16, WavWriter.Header.RF64);
        ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN).putLong(28, Long.MAX_VALUE - 3);
        UnreadableWav problem = assertThrows(UnreadableWav.class, () -> open(file));
        assertTrue(problem.getMessage().contains("only 400 are there"), problem.getMessage());
    }

    @Test
    void more_valid_bits_than_bits_are_refused() {
        byte[] file = WavWriter.bytes(noise(2, 100), 48_000, SampleFormat.INT24, WavWriter.Header.EXTENSIBLE);
        putShort(file, 38, 25);
        UnreadableWav problem = assertThrows(UnreadableWav.class, () -> open(file));
        assertTrue(problem.getMessage().contains("25 valid bits in a container of 24"), problem.getMessage());
    }

    @Test
    void a_value_that_is_no_number_is_named_with_its_place() throws IOException {
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
            double[][] written = noise(2, 8_000);
            written[1][4_000] = bad;
            Path file = WavWriter.write(
                    folder.resolve("nan.wav"), written, 8_000, SampleFormat.FLOAT32, WavWriter.Header.CLASSIC);
            Recording recording = WavRecording.open(file);
            UnreadableWav problem = assertThrows(
                    UnreadableWav.class, () -> LevelBench.measure(recording, LevelOptions.usual(), Progress.NONE));
            assertTrue(problem.getMessage().contains("Channel 2 holds " + bad + " at 0.500 s"), problem.getMessage());
            assertEquals(44 + 4_000 * 8 + 4, problem.offsetBytes());
        }
    }

    private WavRecording open(byte[] file) throws IOException {
        return WavRecording.open(Files.write(folder.resolve("some.wav"), file));
    }

    private static Arguments damage(String what, UnaryOperator<byte[]> damage, long offset, String message) {
        return Arguments.of(what, damage, offset, message);
    }

    private static byte[] bytes(int channels, int frames) {
        return WavWriter.bytes(noise(channels, frames), 48_000, SampleFormat.INT16, WavWriter.Header.CLASSIC);
    }

    private static double[][] noise(int channels, int frames) {
        Random random = new Random(channels);
        double[][] noise = new double[channels][];
        for (int channel = 0; channel < channels; channel++) {
            noise[channel] = random.doubles(frames, -0.99, 0.99).toArray();
        }
        return noise;
    }

    private static byte[] put(byte[] file, int at, String name) {
        System.arraycopy(name.getBytes(StandardCharsets.US_ASCII), 0, file, at, 4);
        return file;
    }

    private static byte[] putShort(byte[] file, int at, int number) {
        ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN).putShort(at, (short) number);
        return file;
    }

    private static byte[] putInt(byte[] file, int at, int number) {
        ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN).putInt(at, number);
        return file;
    }
}
