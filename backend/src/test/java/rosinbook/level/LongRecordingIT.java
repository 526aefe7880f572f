package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An hour of six inputs at 96 kHz and 24 bit, 6.2 GB, of which all but the start is a hole that takes no room on the disk. */
class LongRecordingIT {
    private static final int RATE = 96_000;
    private static final long HOUR_BYTES = 3600L * RATE * 18;

    @TempDir
    Path folder;

    @Test
    void an_hour_is_measured_within_half_of_the_memory_allowed() throws IOException, InterruptedException {
        Path file = folder.resolve("hour.wav");
        double[][] played = new BowedStrings(1, RATE, "E5", "A4", "D4", "G3", "C3", "F2").play();
        byte[] start = WavWriter.bytes(played, RATE, SampleFormat.INT24, WavWriter.Header.RF64);
        ByteBuffer.wrap(start).order(ByteOrder.LITTLE_ENDIAN).putLong(28, HOUR_BYTES);
        Files.write(file, start);
        int header = start.length - played[0].length * 18;
        try (RandomAccessFile hour = new RandomAccessFile(file.toFile(), "rw")) {
            hour.setLength(header + HOUR_BYTES);
        }
        Process process = new ProcessBuilder(
                        ProcessHandle.current().info().command().orElseThrow(),
                        "-Xmx128m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "rosinbook.cli.Main",
                        "levels",
                        file.toString(),
                        "--json")
                .redirectErrorStream(true)
                .start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        int status = process.waitFor();
        assertTrue(status == 0 || status == 1, printed);
        assertEquals(18, printed.split("\"loudness\"").length - 1, printed);
    }
}
