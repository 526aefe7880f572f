package rosinbook.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rosinbook.level.LevelBench;
import rosinbook.level.LevelComparison;
import rosinbook.level.LevelMeasurement;
import rosinbook.level.LevelOptions;
import rosinbook.level.LevelReport;
import rosinbook.level.LevelSummary;
import rosinbook.level.LevelsJson;
import rosinbook.level.Loudness;
import rosinbook.level.Recording;
import rosinbook.level.Segment;
import rosinbook.level.StrokeFile;
import rosinbook.level.UnreadableWav;
import rosinbook.level.UnusableRecording;
import rosinbook.level.WavRecording;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.InvalidContent;
import rosinbook.take.smf.MidiFormatException;

/** {@code /api/bench/levels}: a recording, a meter's readings or a take in, levels and advice out. Nothing is saved. */
final class LevelsResource {
    private static final Pattern STROKE = Pattern.compile("(?i)(?:.*[^0-9])?([1-8])[ _-](soft|medium|loud)\\.wave?");

    private final Shelf shelf;
    private final LevelUploads uploads;
    private final Workbench workbench;
    private final Clock clock;

    LevelsResource(Shelf shelf, LevelUploads uploads, Workbench workbench, Clock clock) {
        this.shelf = shelf;
        this.uploads = uploads;
        this.workbench = workbench;
        this.clock = clock;
    }

    void register(RoutesConfig routes) {
        routes.post("/api/bench/levels", this::measure);
        routes.post("/api/bench/levels/compare", this::compare);
        routes.post("/api/bench/levels/{upload}", this::measureAgain);
        routes.get("/api/bench/levels/{upload}", this::progress);
        routes.delete("/api/bench/levels/{upload}", this::forget);
        routes.exception(
                UnreadableWav.class,
                (problem, exchange) -> Problems.answer(
                        exchange,
                        new Problem(422, "unreadable-recording", "This recording cannot be read", problem.getMessage())
                                .with("offsetBytes", Long.toString(problem.offsetBytes()))));
        routes.exception(
                UnusableRecording.class,
                (problem, exchange) -> Problems.answer(
                        exchange,
                        new Problem(
                                422,
                                "unusable-recording",
                                "This recording does not say enough",
                                problem.getMessage())));
        routes.exception(
                MidiFormatException.class,
                (problem, exchange) -> Problems.answer(
                        exchange,
                        new Problem(422, "unreadable-take", "This take cannot be read", problem.getMessage())));
    }

    private void measure(Context exchange) throws IOException {
        LevelQuestion question = LevelQuestion.of(exchange, shelf.notebook(exchange));
        String name = Requests.text(exchange, "name").orElse("");
        switch (Requests.mediaType(exchange)) {
            case "audio/wav", "audio/x-wav", "audio/wave", "audio/vnd.wave" ->
                arrived(
                        exchange,
                        question,
                        uploads.receive(LevelUploads.Owner.of(exchange), name, exchange.bodyInputStream()));
            case "multipart/form-data" ->
                arrived(exchange, question, uploads.receive(LevelUploads.Owner.of(exchange), () -> parts(exchange)));
            case "audio/midi", "audio/x-midi", "audio/mid" -> {
                byte[] take = Body.whole(exchange, Limit.MIDI_BYTES);
                LevelMeasurement measurement = workbench.compute(() -> LevelTake.measure(take, question.options()));
                answer(exchange, question, measurement, name, Answers.object());
            }
            case "application/json" ->
                answer(exchange, question, LevelMeter.measure(exchange, question.options()), name, Answers.object());
            default ->
                throw Requests.wrongMediaType(
                        "Send a recording as audio/wav (several mono files as multipart/form-data), a take as audio/midi,"
                                + " or a meter's readings as application/json.");
        }
    }

    private static List<UploadedFile> parts(Context exchange) {
        Limit.RECORDING_BYTES.check(exchange.req().getContentLengthLong());
        try {
            return exchange.uploadedFiles();
        } catch (Exception malformed) {
            exchange.header("Connection", "close");
            throw Body.trouble(malformed)
                    .filter(trouble -> trouble.status() != 400)
                    .orElseGet(() -> isOfDisk(malformed) ? LevelUploads.full() : noParts());
        }
    }

    private static Problem noParts() {
        return new Problem(
                400,
                "bad-request",
                "The request is not right",
                "The parts of this multipart/form-data cannot be told apart, or are too large; send the files again.");
    }

    /** Whether the parts could not be laid down; of a disk that is full the JDK only tells in words, as an IOException. */
    private static boolean isOfDisk(Throwable thrown) {
        for (Throwable each = thrown; each != null; each = each.getCause()) {
            boolean isInWords = each.getClass() == IOException.class && each.getCause() == null;
            if (isInWords || each instanceof FileSystemException) {
                return true;
            }
        }
        return false;
    }

    /** With {@code later=true} it is only taken in, so that the page can ask how far the measuring has come. */
    private void arrived(Context exchange, LevelQuestion question, LevelUploads.Upload upload) throws IOException {
        try {
            if (Requests.flag(exchange, "later")) {
                ObjectNode json = Answers.object().put("upload", upload.id().toString());
                json.set("recording", recording(upload));
                exchange.status(201);
                Answers.json(exchange, json);
                return;
            }
            measure(exchange, question, upload, List.of());
        } catch (IOException | RuntimeException problem) {
            uploads.forget(upload);
            throw problem;
        }
    }

    private void measureAgain(Context exchange) throws IOException {
        LevelUploads.Upload upload = upload(exchange);
        LevelQuestion question = LevelQuestion.of(exchange, shelf.notebook(exchange));
        ArrayNode given = Requests.list(Requests.body(exchange, "segments"), "segments");
        if (given.size() > Limit.STROKES.most()) {
            throw InvalidContent.tooMuch("/segments", new PastLimit(Limit.STROKES));
        }
        List<Segment> segments = new ArrayList<>();
        for (int i = 0; i < given.size(); i++) {
            segments.add(record("/segments/" + i, given.get(i), Segment.class));
        }
        measure(exchange, question, upload, segments);
    }

    private void measure(Context exchange, LevelQuestion question, LevelUploads.Upload upload, List<Segment> segments)
            throws IOException {
        LevelOptions options = question.options().withSegments(segments);
        upload.at(0);
        ObjectNode extras = Answers.object().put("upload", upload.id().toString());
        try {
            extras.set("recording", recording(upload));
            LevelMeasurement measurement = workbench.compute(() -> measurement(upload, options));
            answer(exchange, question, measurement, upload.name(), extras);
        } catch (NoSuchFileException madeRoom) {
            throw LevelUploads.gone();
        }
    }

    private static LevelMeasurement measurement(LevelUploads.Upload upload, LevelOptions options) throws IOException {
        List<WavRecording> recordings = new ArrayList<>();
        List<StrokeFile> strokes = new ArrayList<>();
        for (LevelUploads.Sent sent : upload.files()) {
            WavRecording recording = sent.open();
            recordings.add(recording);
            Matcher named = STROKE.matcher(sent.name());
            if (named.matches()) {
                strokes.add(
                        new StrokeFile(Integer.parseInt(named.group(1)), Loudness.parse(named.group(2)), recording));
            }
        }
        return strokes.size() == recordings.size() && strokes.size() > 1
                ? LevelBench.measureStrokeFiles(strokes, options, upload::at)
                : LevelBench.measure(LevelBench.together(recordings), options, upload::at);
    }

    private static ObjectNode recording(LevelUploads.Upload upload) throws IOException {
        Recording first = upload.files().get(0).open();
        ObjectNode json = Answers.object().put("name", upload.name());
        json.put(
                "inputs",
                upload.files().size() == 1 ? first.inputs() : upload.files().size());
        json.put("sampleRate", first.sampleRate());
        json.put("seconds", (double) first.frames() / first.sampleRate());
        return json.put("samples", first.samples().toString());
    }

    private void answer(
            Context exchange, LevelQuestion question, LevelMeasurement measurement, String name, ObjectNode extras) {
        LevelReport report = LevelReport.of(measurement, question.advice(measurement));
        ObjectNode json = LevelsJson.MAPPER.valueToTree(report);
        json.setAll(extras);
        question.scaleInWords().ifPresent(scale -> json.set("scale", scale));
        String from = name.length() > 200 ? name.substring(0, 200) : name;
        json.set("summary", Answers.tree(LevelSummary.of(measurement, LocalDate.now(clock), from)));
        Answers.json(exchange, json);
    }

    private void progress(Context exchange) {
        LevelUploads.Upload upload = upload(exchange);
        Answers.json(exchange, Answers.object().put("fraction", upload.fraction()));
    }

    private void forget(Context exchange) {
        uploads.forget(upload(exchange));
        exchange.status(204);
    }

    private LevelUploads.Upload upload(Context exchange) {
        UUID id = Requests.uuidIn(exchange.pathParam("upload")).orElseThrow(LevelUploads::gone);
        return uploads.find(id, LevelUploads.Owner.of(exchange));
    }

    /** {@code {"first": {"name", "levels"}, "second": {"name", "levels"}}}: levels as "summary" gives them. */
    private void compare(Context exchange) {
        ObjectNode body = Requests.body(exchange, "first", "second");
        Side first = record("/first", body.path("first"), Side.class);
        Side second = record("/second", body.path("second"), Side.class);
        Answers.json(exchange, LevelComparison.of(first.levels(), first.name(), second.levels(), second.name()));
    }

    /** One of two measurements, and what it is called. */
    record Side(String name, LevelSummary levels) {
        Side {
            if (name == null || name.isBlank()) {
                throw new IllegalArgumentException("name is missing");
            }
            if (name.length() > 100) {
                throw new PastLimit(Limit.TEXT_LENGTH, "name has " + name.length() + " characters; 100 is the most");
            }
            if (levels == null) {
                throw new IllegalArgumentException("levels is missing; give a measurement's summary");
            }
        }
    }

    static <T> T record(String pointer, JsonNode json, Class<T> type) {
        try {
            T made = ContentJson.strict().treeToValue(json, type);
            if (made == null) {
                throw new InvalidContent(pointer, "an object is needed here");
            }
            return made;
        } catch (JsonProcessingException problem) {
            Throwable cause = problem.getCause();
            if (cause instanceof PastLimit tooMuch) {
                throw InvalidContent.tooMuch(pointer, tooMuch);
            }
            String reason =
                    cause instanceof IllegalArgumentException ? cause.getMessage() : problem.getOriginalMessage();
            throw new InvalidContent(
                    pointer, String.valueOf(reason).lines().findFirst().orElse("this cannot be read"));
        }
    }
}
