package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rosinbook.pitch.Note;

/** Against the truth beside the recording in published/levels; tolerance 1 dB, as its makers ask, or closer where it holds. */
class PublishedLevelsTest {
    private static final Path FOLDER = Path.of("src/test/resources/published/levels");
    private static final List<Note> VIOLIN =
            List.of(Note.parse("E5"), Note.parse("A4"), Note.parse("D4"), Note.parse("G3"));

    private static JsonNode truth;
    private static LevelMeasurement measurement;

    @BeforeAll
    static void measure() throws IOException {
        truth = new ObjectMapper().readTree(FOLDER.resolve("reel.json").toFile());
        measurement = LevelBench.measure(
                WavRecording.open(FOLDER.resolve("reel.wav")),
                LevelOptions.usual().withOpenNotes(VIOLIN),
                Progress.NONE);
    }

    @Test
    void every_stroke_is_found_with_its_string_loudness_and_time() {
        assertEquals(truth.get("segments").size(), measurement.segments().size());
        for (int i = 0; i < measurement.segments().size(); i++) {
            JsonNode expected = truth.get("segments").get(i);
            MeasuredSegment found = measurement.segments().get(i);
            assertEquals(expected.get("string").asInt(), found.string());
            assertEquals(expected.get("loudness").asText(), found.loudness().toString());
            assertEquals(expected.get("start").asDouble(), found.fromSeconds(), 0.05);
            assertEquals(expected.get("end").asDouble(), found.toSeconds(), 0.05);
            assertEquals(expected.get("own_rms_dbfs").asDouble(), found.rmsDbfs(), 0.5);
        }
    }

    @Test
    void every_leak_is_within_a_quarter_of_a_decibel_of_the_truth() {
        for (int string = 0; string < 4; string++) {
            for (int input = 0; input < 4; input++) {
                assertTrue(measurement.crosstalk().aboveNoise().get(string).get(input));
                assertEquals(
                        truth.get("crosstalk_db").get(input).get(string).asDouble(),
                        measurement.crosstalk().db().get(string).get(input),
                        0.25);
            }
        }
    }

    @Test
    void every_leak_heard_above_the_noise_is_within_a_decibel_at_each_loudness_too() {
        int compared = 0;
        for (JsonNode segment : truth.get("segments")) {
            int string = segment.get("string").asInt() - 1;
            Crosstalk.Table table = measurement
                    .crosstalk()
                    .byLoudness()
                    .get(Loudness.parse(segment.get("loudness").asText()));
            for (int input = 0; input < 4; input++) {
                if (segment.get("crosstalk_above_noise").get(input).asBoolean()) {
                    assertEquals(
                            truth.get("crosstalk_db").get(input).get(string).asDouble(),
                            table.db().get(string).get(input),
                            1);
                    compared++;
                }
            }
        }
        assertEquals(45, compared);
    }

    @Test
    void noise_floors_are_within_half_a_decibel() {
        for (int input = 0; input < 4; input++) {
            assertEquals(
                    truth.get("noise_floor_dbfs_by_input").get(input).asDouble(),
                    measurement.inputs().get(input).noiseDbfs(),
                    0.5);
        }
    }

    @Test
    void windows_lie_between_the_loudest_true_leak_and_the_softest_true_stroke() {
        for (TriggerWindow window : measurement.windows()) {
            double softest = 0;
            double leak = -200;
            for (JsonNode segment : truth.get("segments")) {
                if (segment.get("string").asInt() == window.string()) {
                    softest = Math.min(softest, segment.get("own_rms_dbfs").asDouble());
                } else {
                    leak = Math.max(
                            leak,
                            segment.get("rms_dbfs_by_input")
                                    .get(window.string() - 1)
                                    .asDouble());
                }
            }
            assertEquals(softest - 3, window.highDbfs(), 0.5);
            assertEquals(leak + 3, window.lowDbfs(), 0.5);
            assertEquals(window.highDbfs() - window.lowDbfs(), window.widthDb(), 1e-9);
        }
        assertEquals(4, measurement.windows().size());
    }

    @Test
    void the_pitch_of_every_stroke_is_its_open_string() {
        for (MeasuredSegment segment : measurement.segments()) {
            double open = VIOLIN.get(segment.string() - 1).hertz(440);
            assertEquals(open, segment.hertz(), open * 0.02);
        }
    }
}
