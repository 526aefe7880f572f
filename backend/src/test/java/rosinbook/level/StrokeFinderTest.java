package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against made-up recordings whose strokes and leaks are known exactly. */
class StrokeFinderTest {
    @TempDir
    Path folder;

    static Stream<BowedStrings> players() {
        BowedStrings hummed = new BowedStrings(3, 11_025, "A4", "D4", "G3", "C3");
        hummed.humDbfs = -66;
        BowedStrings offset = new BowedStrings(4, 22_050, "A3", "D3", "G2", "C2");
        offset.offset = -0.04;
        BowedStrings hasty = new BowedStrings(5, 16_000, "E5", "A4", "D4", "G3", "C3");
        hasty.pauseSeconds = 0.1;
        BowedStrings noisy = new BowedStrings(6, 44_100, "E5", "A4", "D4", "G3", "C3", "F2");
        noisy.noiseDbfs = -50;
        BowedStrings clean = new BowedStrings(7, 48_000, "A4", "D4");
        clean.noiseDbfs = -100;
        BowedStrings sixtyHertz = new BowedStrings(8, 32_000, "E5", "A4", "D4", "G3", "C3", "F2", "Bb1");
        sixtyHertz.humDbfs = -60;
        sixtyHertz.mainsHertz = 60;
        BowedStrings leaking = new BowedStrings(9, 16_000, "E5", "A4", "D4", "G3");
        leaking.leakDb[1][0] = -4;
        leaking.leakDb[2][1] = -4;
        return Stream.of(
                new BowedStrings(1, 8_000, "E5", "A4", "D4", "G3"),
                new BowedStrings(2, 96_000, "E5", "A4", "D4"),
                hummed,
                offset,
                hasty,
                noisy,
                clean,
                sixtyHertz,
                leaking);
    }

    @ParameterizedTest
    @MethodSource("players")
    void strokes_and_leaks_come_out_as_they_were_played(BowedStrings player) throws IOException {
        LevelMeasurement found = measure(player, LevelOptions.usual().withOpenNotes(player.openNotes));
        assertEquals(player.strokes.size(), found.segments().size());
        for (int i = 0; i < player.strokes.size(); i++) {
            Segment played = player.strokes.get(i);
            MeasuredSegment segment = found.segments().get(i);
            assertEquals(played.string(), segment.string(), "string of stroke " + i);
            assertEquals(played.loudness(), segment.loudness(), "loudness of stroke " + i);
            assertEquals(played.fromSeconds(), segment.fromSeconds(), 0.06);
            assertEquals(played.toSeconds(), segment.toSeconds(), 0.06);
            assertEquals(player.strokeDbfs.get(i), segment.rmsDbfs(), 0.5);
        }
        assertLeaks(player, found, 1);
    }

    @Test
    void an_input_turned_down_so_far_that_a_neighbour_is_louder_still_gets_its_strokes() throws IOException {
        BowedStrings player = new BowedStrings(20, 16_000, "E5", "A4", "D4", "G3");
        player.inputGainDb = new double[] {0, 0, -24, 0};
        player.leakDb[2][1] = -18;
        LevelMeasurement found = measure(player, LevelOptions.usual());
        assertEquals(
                player.strokes.stream().map(Segment::string).toList(),
                found.segments().stream().map(MeasuredSegment::string).toList());
        assertEquals(6, found.crosstalk().db().get(2).get(1), 1);
    }

    @Test
    void crossed_inputs_are_measured_as_told() throws IOException {
        BowedStrings player = new BowedStrings(21, 16_000, "E5", "A4", "D4");
        double[][] inputs = player.play();
        double[][] crossed = {inputs[2], inputs[0], inputs[1]};
        Recording recording = WavRecording.open(WavWriter.write(folder.resolve("crossed.wav"), crossed, 16_000));
        LevelMeasurement found = LevelBench.measure(
                recording,
                LevelOptions.usual().withOpenNotes(player.openNotes).withInputOfString(List.of(2, 3, 1)),
                Progress.NONE);
        assertEquals(
                player.strokes.stream().map(Segment::string).toList(),
                found.segments().stream().map(MeasuredSegment::string).toList());
        assertEquals(0, found.crosstalk().db().get(0).get(1));
        assertEquals(player.leakDb(0, 1), found.crosstalk().db().get(0).get(2), 1);
    }

    @Test
    void crossed_inputs_that_nobody_told_of_are_noticed_by_their_pitch() throws IOException {
        BowedStrings player = new BowedStrings(22, 16_000, "E5", "A4", "D4");
        double[][] inputs = player.play();
        double[][] crossed = {inputs[1], inputs[0], inputs[2]};
        Recording recording = WavRecording.open(WavWriter.write(folder.resolve("crossed.wav"), crossed, 16_000));
        LevelMeasurement found =
                LevelBench.measure(recording, LevelOptions.usual().withOpenNotes(player.openNotes), Progress.NONE);
        assertTrue(
                found.warnings().stream().anyMatch(warning -> warning.startsWith("String 1 sounds at 4")),
                found.warnings().toString());
    }

    @Test
    void a_string_that_is_not_bowed_is_named_and_has_no_leaks_and_no_window() throws IOException {
        BowedStrings player = new BowedStrings(23, 16_000, "E5", "A4", "D4");
        double[][] inputs = player.play();
        int end = (int) (player.strokes.get(5).toSeconds() * 16_000) + 1600;
        double[][] two = new double[3][];
        for (int input = 0; input < 3; input++) {
            two[input] = Arrays.copyOf(inputs[input], end);
        }
        LevelMeasurement found = LevelBench.measure(
                WavRecording.open(WavWriter.write(folder.resolve("two.wav"), two, 16_000)),
                LevelOptions.usual(),
                Progress.NONE);
        assertTrue(
                found.warnings().get(0).startsWith("String 3 is not bowed"),
                found.warnings().toString());
        assertNull(found.crosstalk().db().get(2).get(0));
        assertEquals(
                List.of(1, 2),
                found.windows().stream().map(TriggerWindow::string).toList());
    }

    @Test
    void corrected_segments_are_measured_where_the_player_says() throws IOException {
        BowedStrings player = new BowedStrings(24, 16_000, "E5", "A4");
        double[][] inputs = player.play();
        Recording recording = WavRecording.open(WavWriter.write(folder.resolve("given.wav"), inputs, 16_000));
        LevelMeasurement found =
                LevelBench.measure(recording, LevelOptions.usual().withSegments(player.strokes), Progress.NONE);
        assertEquals(
                player.strokes,
                found.segments().stream().map(MeasuredSegment::toSegment).toList());
        assertLeaks(player, found, 1);
    }

    private LevelMeasurement measure(BowedStrings player, LevelOptions options) throws IOException {
        Path file = WavWriter.write(folder.resolve("played.wav"), player.play(), player.sampleRate);
        return LevelBench.measure(WavRecording.open(file), options, Progress.NONE);
    }

    private static void assertLeaks(BowedStrings player, LevelMeasurement found, double withinDb) {
        int strings = player.openNotes.size();
        for (int string = 0; string < strings; string++) {
            for (int input = 0; input < strings; input++) {
                if (found.crosstalk().aboveNoise().get(string).get(input)) {
                    assertEquals(
                            player.leakDb(string, input),
                            found.crosstalk().db().get(string).get(input),
                            withinDb,
                            "string " + (string + 1) + " on input " + (input + 1));
                }
            }
        }
    }
}
