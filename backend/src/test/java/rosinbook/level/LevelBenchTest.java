package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LevelBenchTest {
    @TempDir
    Path folder;

    @Test
    void silence_is_refused_with_the_level_found_and_what_to_record() throws IOException {
        double[][] noise = new BowedStrings(1, 8_000, "A4", "D4").play();
        double[][] silent = {Arrays.copyOf(noise[0], 3_500), Arrays.copyOf(noise[1], 3_500)};
        assertRefused(silent, "No stroke stands out in 0.4 s");
        assertRefused(new double[2][8_000], "Every sample of this recording is 0");
    }

    @Test
    void one_string_alone_is_refused_by_name() throws IOException {
        BowedStrings player = new BowedStrings(2, 8_000, "A4", "D4");
        double[][] played = player.play();
        int end = (int) (8_000 * (player.strokes.get(2).toSeconds() + 0.1));
        assertRefused(
                new double[][] {Arrays.copyOf(played[0], end), Arrays.copyOf(played[1], end)},
                "Only string 1 is bowed in this recording (3 strokes)");
    }

    @Test
    void a_single_channel_is_refused_with_what_to_give_instead() throws IOException {
        assertRefused(new double[1][8_000], "This file has one channel");
    }

    @Test
    void more_strings_than_inputs_are_refused() throws IOException {
        Recording recording =
                WavRecording.open(WavWriter.write(folder.resolve("two.wav"), new double[2][8_000], 8_000));
        LevelOptions options = LevelOptions.usual().withInputOfString(List.of(1, 2, 3));
        var problem = assertThrows(
                IllegalArgumentException.class, () -> LevelBench.measure(recording, options, Progress.NONE));
        assertTrue(problem.getMessage().contains("3 strings for 2 inputs"), problem.getMessage());
    }

    @Test
    void a_segment_beyond_the_end_is_refused() throws IOException {
        Recording recording =
                WavRecording.open(WavWriter.write(folder.resolve("two.wav"), new double[2][8_000], 8_000));
        LevelOptions options = LevelOptions.usual().withSegments(List.of(new Segment(1, 2, 3, Loudness.SOFT)));
        var problem = assertThrows(
                IllegalArgumentException.class, () -> LevelBench.measure(recording, options, Progress.NONE));
        assertTrue(problem.getMessage().contains("from 2.000 to 3.000 s"), problem.getMessage());
    }

    @Test
    void clipping_and_an_unused_input_are_told() throws IOException {
        BowedStrings player = new BowedStrings(3, 8_000, "A4", "D4");
        player.inputGainDb = new double[] {18, 0};
        double[][] played = player.play();
        double[][] three = {played[0], played[1], new double[played[0].length]};
        LevelMeasurement found = LevelBench.measure(
                WavRecording.open(WavWriter.write(folder.resolve("clip.wav"), three, 8_000)),
                LevelOptions.usual().withOpenNotes(player.openNotes),
                Progress.NONE);
        assertTrue(found.inputs().get(0).clippedSamples() > 0);
        assertTrue(found.warnings().stream().anyMatch(warning -> warning.startsWith("Input 1 reaches full scale")));
        assertEquals(3, found.inputs().size());
        assertEquals(2, found.windows().size());
        assertNull(found.inputs().get(2).signalToNoiseDb());
    }

    @Test
    void the_waveform_is_thin_and_shows_strokes_where_they_are() throws IOException {
        BowedStrings player = new BowedStrings(4, 16_000, "A4", "D4");
        LevelMeasurement found = measure(player.play(), 16_000);
        Waveform waveform = found.waveform();
        assertTrue(waveform.peaks().get(0).size() <= 1200);
        int during = (int) ((player.strokes.get(2).fromSeconds() + 0.3) / waveform.secondsPerPoint());
        assertTrue(waveform.peaks().get(0).get(during)
                > 10 * waveform.peaks().get(0).get(0));
    }

    @Test
    void one_mono_file_per_string_and_loudness_gives_levels_and_windows_but_no_leaks() throws IOException {
        BowedStrings player = new BowedStrings(5, 16_000, "A4", "D4");
        double[][] played = player.play();
        List<StrokeFile> files = new ArrayList<>();
        for (Segment stroke : player.strokes) {
            int from = (int) ((stroke.fromSeconds() - 0.13) * 16_000);
            int to = (int) ((stroke.toSeconds() + 0.13) * 16_000);
            double[] part = Arrays.copyOfRange(played[stroke.string() - 1], from, to);
            Path file = WavWriter.write(
                    folder.resolve(stroke.string() + "-" + stroke.loudness() + ".wav"), new double[][] {part}, 16_000);
            files.add(new StrokeFile(stroke.string(), stroke.loudness(), WavRecording.open(file)));
        }
        LevelMeasurement found = LevelBench.measureStrokeFiles(files, LevelOptions.usual(), Progress.NONE);
        for (int i = 0; i < player.strokes.size(); i++) {
            assertEquals(player.strokeDbfs.get(i), found.segments().get(i).rmsDbfs(), 0.5);
        }
        assertNull(found.crosstalk().db().get(0).get(1));
        assertEquals(2, found.windows().size());
        assertEquals(0, found.windows().get(0).leakFromString());
        assertTrue(found.notes().stream().anyMatch(note -> note.contains("tells nothing about leaks")));
    }

    @Test
    void meter_readings_in_the_synths_own_units_become_decibels() {
        List<LevelReading> readings = List.of(
                new LevelReading(1, Loudness.SOFT, 1, 20),
                new LevelReading(1, Loudness.LOUD, 1, 40),
                new LevelReading(1, Loudness.LOUD, 2, 10),
                new LevelReading(2, Loudness.SOFT, 2, 25));
        Levels levels = MeterReadings.inUnits(readings, List.of(1, 2), 2, List.of(0.0, 0.0), 0.5);
        LevelMeasurement found = LevelBench.fromLevels(levels, LevelOptions.usual());
        assertEquals(10, levels.own(1, Loudness.SOFT).orElseThrow(), 1e-9);
        // String 2: softest 12.5, the loud leak of string 1 at 5, margins of 3.
        assertEquals(1.5, found.windows().get(1).widthDb(), 1e-9);
        // (10^0.5 − 1) ÷ (10^2 − 1): noise at 0 taken off both.
        assertEquals(
                10 * Math.log10((Math.pow(10, 0.5) - 1) / 99),
                found.crosstalk().db().get(0).get(1),
                1e-9);
    }

    @Test
    void notes_of_a_take_stand_in_for_levels_and_ghosts_for_leaks() {
        List<PlayedNote> notes = List.of(
                new PlayedNote(1, 64, false),
                new PlayedNote(1, 100, false),
                new PlayedNote(1, 120, false),
                new PlayedNote(1, 20, true),
                new PlayedNote(2, 40, false),
                new PlayedNote(2, 110, false),
                new PlayedNote(2, 39, true));
        LevelMeasurement found = LevelBench.fromNotes(notes, 3, LevelOptions.usual());
        // General MIDI level 2: 40·log10(64/127) = −11.9 dB, 40·log10(20/127) = −32.1 dB.
        assertEquals(-11.905, found.windows().get(0).softestStrokeDbfs(), 0.001);
        assertEquals(-32.111, found.windows().get(0).loudestLeakDbfs(), 0.001);
        assertTrue(found.windows().get(0).isOpen());
        assertTrue(found.windows().get(1).advice().contains("a neighbour reaches"));
        assertTrue(found.warnings().get(0).startsWith("String 3 played no note"));
    }

    private LevelMeasurement measure(double[][] samples, int rate) throws IOException {
        Path file = WavWriter.write(folder.resolve("some.wav"), samples, rate);
        return LevelBench.measure(WavRecording.open(file), LevelOptions.usual(), Progress.NONE);
    }

    private void assertRefused(double[][] samples, String message) {
        UnusableRecording problem = assertThrows(UnusableRecording.class, () -> measure(samples, 8_000));
        assertTrue(problem.getMessage().contains(message), problem.getMessage());
    }
}
