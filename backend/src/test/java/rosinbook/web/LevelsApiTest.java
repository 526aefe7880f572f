package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rosinbook.notebook.ContentJson;

/** The level bench through HTTP, with the recording whose truth stands beside it in published/levels. */
class LevelsApiTest {
    private static final Path FOLDER = Path.of("src/test/resources/published/levels");
    private static final String BENCH = "/api/bench/levels";

    private final Api api = new Api();
    private final Gear gear = new Gear(api);

    @AfterEach
    void stop() {
        api.close();
    }

    private Answer send(String path, String type, byte[] body) {
        return api.send(api.to(path).header("Content-Type", type).POST(BodyPublishers.ofByteArray(body)));
    }

    private static byte[] recording() throws IOException {
        return Files.readAllBytes(FOLDER.resolve("reel.wav"));
    }

    private String rig() {
        return api.create(
                        "rigs",
                        gear.rig(20, 18)
                                .replace(
                                        "}}}", "},'3':{'input':3,'sensitivity':20},'4':{'input':4,'sensitivity':20}}}"))
                .id();
    }

    @Test
    void a_recording_is_measured_as_its_makers_say() throws IOException {
        JsonNode truth = new ObjectMapper().readTree(FOLDER.resolve("reel.json").toFile());
        JsonNode report = send(BENCH + "?name=reel.wav&rig=" + rig(), "audio/wav", recording())
                .expect(200)
                .json();
        for (int string = 0; string < 4; string++) {
            for (int input = 0; input < 4; input++) {
                // Tolerance 1 dB, as the makers of the recording ask.
                assertEquals(
                        truth.path("crosstalk_db").path(input).path(string).asDouble(),
                        report.path("crosstalkDb").path(string).path(input).asDouble(),
                        1);
            }
        }
        assertEquals(truth.path("segments").size(), report.path("segments").size());
        assertEquals(4, report.path("recording").path("inputs").asInt());
        assertEquals("G3", report.path("strings").path(3).path("open").asText());
        assertTrue(report.path("waveform").path("peaks").size() == 4);
        assertEquals(4, report.path("advice").size());
        assertTrue(report.path("advice").path(0).path("isAssumed").asBoolean());
        assertEquals("assumed", report.path("scale").path("from").asText());
        assertEquals(2, report.path("cautions").size());
        assertEquals("2026-11-12", report.path("summary").path("measuredOn").asText());
    }

    @Test
    void a_correction_needs_no_second_upload() throws IOException {
        JsonNode found =
                send(BENCH + "?strings=E5,A4,D4,G3", "audio/wav", recording()).json();
        ArrayNode corrected = found.path("segments").deepCopy();
        for (JsonNode segment : corrected) {
            ((ObjectNode) segment).retain("string", "from", "to", "loudness");
        }
        ((ObjectNode) corrected.get(0)).put("loudness", "loud");
        JsonNode again = api.post(
                        BENCH + "/" + found.path("upload").asText() + "?strings=E5,A4,D4,G3",
                        "{'segments':" + corrected + "}")
                .expect(200)
                .json();
        assertEquals("loud", again.path("segments").path(0).path("loudness").asText());
        assertEquals(corrected.size(), again.path("segments").size());
        assertEquals(
                1.0,
                api.get(BENCH + "/" + found.path("upload").asText())
                        .json()
                        .path("fraction")
                        .asDouble());
    }

    @Test
    void a_recording_is_forgotten_after_an_hour_and_when_asked_to() throws IOException {
        String upload = send(BENCH + "?later=true", "audio/wav", recording())
                .expect(201)
                .json()
                .path("upload")
                .asText();
        String other = send(BENCH + "?later=true", "audio/wav", recording())
                .json()
                .path("upload")
                .asText();
        api.delete(BENCH + "/" + other).expect(204);
        api.post(BENCH + "/" + other, "{}").problem(404, "no-such-upload");
        api.get(BENCH + "/" + upload).expect(200);
        api.clock.pass(Duration.ofMinutes(61));
        api.get(BENCH + "/" + upload).problem(404, "no-such-upload");
    }

    @Test
    void measured_steps_of_the_scale_are_no_longer_assumed() throws IOException {
        JsonNode scale = send(
                        BENCH + "?rig=" + rig() + "&steps=10:-44,20:-38,30:-32&threshold=-40", "audio/wav", recording())
                .json()
                .path("scale");
        assertEquals("measured", scale.path("from").asText());
        assertEquals(0.6, scale.path("decibelsPerStep").asDouble(), 1e-9);
        assertEquals(1, scale.path("fit").path("rSquared").asDouble(), 1e-9);
        assertFalse(scale.path("thresholdAssumed").asBoolean());
    }

    @Test
    void meter_readings_give_leaks_and_windows() {
        String readings = "[{'string':1,'loudness':'soft','input':1,'decibels':-30},"
                + "{'string':1,'loudness':'soft','input':2,'decibels':-48},"
                + "{'string':2,'loudness':'soft','input':2,'decibels':-28},"
                + "{'string':2,'loudness':'soft','input':1,'decibels':-50}]";
        JsonNode report =
                api.post(BENCH, "{'readings':" + readings + "}").expect(200).json();
        assertEquals(-18, report.path("crosstalkDb").path(0).path(1).asDouble(), 0.01);
        assertEquals(14, report.path("windows").path(0).path("widthDb").asDouble(), 0.01);
        JsonNode units = api.post(BENCH, "{'decibelsPerUnit':2,'readings':" + readings + "}")
                .expect(200)
                .json();
        assertEquals(-36, units.path("crosstalkDb").path(0).path(1).asDouble(), 0.01);
    }

    @Test
    void a_take_stands_in_for_a_recording() throws IOException {
        byte[] take = Files.readAllBytes(Path.of("src/test/resources/published/takes/o1_air.reasonable.mid"));
        JsonNode report = send(BENCH + "?strings=E5,A4,D4,G3", "audio/midi", take)
                .expect(200)
                .json();
        assertTrue(report.path("windows").size() >= 2, report.toString());
        assertEquals("take", report.path("summary").path("source").asText());
    }

    @Test
    void one_mono_file_per_string_and_loudness_is_measured_without_leaks() throws IOException {
        byte[] whole = recording();
        byte[] mono = monoOf(whole);
        JsonNode report =
                multipart("1-soft.wav", mono, "2-soft.wav", mono).expect(200).json();
        assertEquals(2, report.path("segments").size());
        JsonNode refused = multipart("one.wav", whole, "two.wav", whole).problem(400, "bad-request");
        assertTrue(refused.path("detail").asText().contains("'one.wav' has 4 channels"), refused.toString());
    }

    @Test
    void files_may_be_called_anything() throws IOException {
        byte[] mono = monoOf(recording());
        for (String first : List.of("2 b.wav", "b.wav", "2.wav", "", "..", "C:\\Übung 1.wav")) {
            Answer answer = multipart("?later=true", first, mono, "b.wav", mono).expect(201);
            assertTrue(
                    answer.json().at("/recording/name").asText().endsWith(" and 1 more"),
                    answer.json().toString());
        }
    }

    @Test
    void lists_that_are_none_are_refused() throws IOException {
        String reading = "[{'string':1,'loudness':'soft','input':1,'decibels':-30}]";
        assertEquals(
                "/noise",
                api.post(BENCH, "{'readings':" + reading + ",'noise':'x'}")
                        .problem(422, "invalid-content")
                        .path("pointer")
                        .asText());
        String upload = send(BENCH + "?later=true", "audio/wav", recording())
                .json()
                .path("upload")
                .asText();
        assertEquals(
                "/segments",
                api.post(BENCH + "/" + upload, "{'segments':'x'}")
                        .problem(422, "invalid-content")
                        .path("pointer")
                        .asText());
    }

    /** The first channel of the recording: four channels of 16 bit behind a header of 44 bytes. */
    private static byte[] monoOf(byte[] wav) {
        int frames = (wav.length - 44) / 8;
        byte[] mono = Arrays.copyOf(wav, 44 + frames * 2);
        mono[22] = 1;
        mono[32] = 2;
        putInt(mono, 28, 32_000);
        putInt(mono, 4, mono.length - 8);
        putInt(mono, 40, frames * 2);
        for (int frame = 0; frame < frames; frame++) {
            mono[44 + 2 * frame] = wav[44 + 8 * frame];
            mono[45 + 2 * frame] = wav[45 + 8 * frame];
        }
        return mono;
    }

    private static void putInt(byte[] bytes, int at, int number) {
        for (int i = 0; i < 4; i++) {
            bytes[at + i] = (byte) (number >> 8 * i);
        }
    }

    private Answer multipart(String firstName, byte[] first, String secondName, byte[] second) {
        return multipart("", firstName, first, secondName, second);
    }

    private Answer multipart(String query, String firstName, byte[] first, String secondName, byte[] second) {
        String head = "--b\r\nContent-Disposition: form-data; name=\"files\"; filename=\"%s\"\r\n"
                + "Content-Type: audio/wav\r\n\r\n";
        return api.send(api.to(BENCH + query)
                .header("Content-Type", "multipart/form-data; boundary=b")
                .POST(BodyPublishers.concat(
                        BodyPublishers.ofString(String.format(head, firstName)),
                        BodyPublishers.ofByteArray(first),
                        BodyPublishers.ofString("\r\n" + String.format(head, secondName)),
                        BodyPublishers.ofByteArray(second),
                        BodyPublishers.ofString("\r\n--b--\r\n"))));
    }

    @Test
    void what_cannot_be_measured_is_told_with_what_to_do() throws IOException {
        byte[] whole = recording();
        JsonNode noWav = send(BENCH, "audio/wav", "this is no recording".getBytes(StandardCharsets.UTF_8))
                .problem(422, "unreadable-recording");
        assertTrue(noWav.path("detail").asText().contains("WAV"), noWav.toString());
        send(BENCH, "audio/wav", new byte[0]).problem(422, "unreadable-recording");
        send(BENCH, "audio/wav", Arrays.copyOf(whole, 60_000)).problem(422, "unreadable-recording");
        byte[] silent = Arrays.copyOf(whole, whole.length);
        Arrays.fill(silent, 44, silent.length, (byte) 0);
        send(BENCH, "audio/wav", silent).problem(422, "unusable-recording");
        send(BENCH, "audio/midi", whole).problem(422, "unreadable-take");
        send(BENCH, "text/plain", whole).problem(415, "wrong-media-type");
        send(BENCH + "?strings=H9", "audio/wav", whole).problem(400, "bad-request");
        send(BENCH + "?inputs=1,1,2,3", "audio/wav", whole).problem(400, "bad-request");
        send(BENCH + "?mains=55", "audio/wav", whole).problem(400, "bad-request");
        send(BENCH + "?margin=NaN", "audio/wav", whole).problem(400, "bad-request");
        send(BENCH + "?steps=1", "audio/wav", whole).expect(200);
        send(BENCH + "?steps=1&rig=" + rig(), "audio/wav", whole).problem(400, "bad-request");
        send(BENCH + "?rig=nothing", "audio/wav", whole).problem(404, "no-such-sheet");
        send(BENCH, "multipart/form-data; boundary=b", whole).problem(400, "bad-request");
        api.post(BENCH, "{'readings':[]}").problem(422, "invalid-content");
        api.post(BENCH, "{'readings':[{'string':1,'loudness':'shy','input':1,'decibels':1}]}")
                .problem(422, "invalid-content");
        api.post(BENCH + "/compare", "{}").problem(422, "invalid-content");
        api.post(BENCH + "/nothing", "{}").problem(404, "no-such-upload");
    }

    @Test
    void a_measurement_stays_attached_to_the_rig_and_is_compared_with_a_later_one() throws IOException {
        String rig = rig();
        JsonNode summary = send(BENCH + "?name=reel.wav&rig=" + rig, "audio/wav", recording())
                .json()
                .path("summary");
        String content = api.get("/api/rigs/" + rig).content().toString();
        assertFalse(content.contains("levels"), "a rig without a measurement is kept as before");
        String applied = content.replaceFirst("\\{", "{\"levels\":" + summary + ",");
        Answer saved = api.put("/api/rigs/" + rig, 1, "{'content':" + applied + ",'reason':'measured'}")
                .expect(200);
        assertEquals(
                ContentJson.canonical(summary),
                ContentJson.canonical(saved.content().path("levels")));

        JsonNode changes = api.get("/api/rigs/" + rig + "/compare?was=1&now=2")
                .expect(200)
                .json()
                .path("changes");
        assertEquals(1, changes.size(), changes.toString());
        String now = changes.path(0).path("now").asText();
        assertTrue(now.startsWith("measured 2026-11-12 from a recording, trigger windows "), now);

        JsonNode later = summary.deepCopy();
        ObjectNode string = (ObjectNode) later.path("strings").path("1");
        string.put("noiseDb", string.path("noiseDb").asDouble() - 6);
        JsonNode comparison = api.post(
                        BENCH + "/compare",
                        "{'first':{'name':'before','levels':" + summary + "},'second':{'name':'after','levels':" + later
                                + "}}")
                .expect(200)
                .json();
        assertEquals(-6, comparison.path("strings").path(0).path("noiseDb").asDouble(), 1e-9);
        assertEquals(0, comparison.path("strings").path(1).path("noiseDb").asDouble(), 1e-9);

        JsonNode broken = summary.deepCopy();
        ((ObjectNode) broken).put("measuredOn", "someday");
        api.put("/api/rigs/" + rig, 2, "{'content':" + content.replaceFirst("\\{", "{\"levels\":" + broken + ",") + "}")
                .problem(422, "invalid-content");
    }
}
