package rosinbook.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import rosinbook.limit.Limit;
import rosinbook.notebook.Blob;
import rosinbook.notebook.Content;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Rig;
import rosinbook.notebook.TakeSheet;
import rosinbook.readout.RigTakes;
import rosinbook.take.Cleaning;
import rosinbook.take.CsvExport;
import rosinbook.take.Exercise;
import rosinbook.take.MidiExport;
import rosinbook.take.MusicXmlExport;
import rosinbook.take.TakeReport;
import rosinbook.take.Threshold;
import rosinbook.take.Tuning;

/** {@code /api/bench/takes}, {@code /api/blobs}, {@code /api/exercise}, and what a kept take holds. */
final class TakesResource {
    private final Shelf shelf;
    private final Workbench workbench;

    TakesResource(Shelf shelf, Workbench workbench) {
        this.shelf = shelf;
        this.workbench = workbench;
    }

    void register(RoutesConfig routes) {
        routes.post("/api/bench/takes", this::bench);
        routes.get("/api/bench/takes/thresholds", exchange -> Answers.json(exchange, thresholds()));
        routes.get("/api/exercise", TakesResource::exercise);
        routes.post("/api/blobs", this::keep);
        routes.get("/api/takes/{id}/report", exchange -> report(exchange, sheet(exchange)));
        routes.get("/api/takes/{id}/original.mid", this::original);
        routes.get("/api/takes/{id}/clean.mid", exchange -> file(exchange, "mid", "audio/midi", midi(exchange)));
        routes.get(
                "/api/takes/{id}/clean.musicxml",
                exchange -> file(exchange, "musicxml", "application/vnd.recordare.musicxml+xml", sheetMusic(exchange)));
        routes.get("/api/takes/{id}/notes.csv", exchange -> file(exchange, "notes.csv", "text/csv", CsvExport::notes));
        routes.get(
                "/api/takes/{id}/faults.csv", exchange -> file(exchange, "faults.csv", "text/csv", CsvExport::faults));
        routes.get("/api/rigs/{id}/takes", this::onRig);
    }

    /** A file in the body, read as the query says; or, as JSON, the content of a take whose file is kept already. */
    private void bench(Context exchange) throws IOException {
        if (Requests.mediaType(exchange).equals("application/json")) {
            ObjectNode body = Requests.body(exchange, "content");
            Content content = ContentJson.read(
                    Kind.TAKES,
                    Requests.optional(body, "content")
                            .orElseThrow(() -> new InvalidContent("/content", "content is missing")));
            report(exchange, (TakeSheet) content);
            return;
        }
        byte[] bytes = TakeReading.midi(exchange);
        answer(exchange, TakeReading.of(exchange), bytes);
    }

    private void report(Context exchange, TakeSheet sheet) throws IOException {
        answer(exchange, TakeReading.of(sheet), bytes(exchange, sheet));
    }

    private void answer(Context exchange, TakeReading reading, byte[] bytes) throws IOException {
        Answers.json(exchange, workbench.compute(() -> {
            Cleaning cleaning = reading.clean(bytes);
            return TakeAnswer.of(cleaning, reading.report(cleaning));
        }));
    }

    private TakeSheet sheet(Context exchange) {
        UUID id = Requests.id(exchange);
        int number = Requests.queryNumber(exchange, "revision", 0);
        Revision revision = number == 0
                ? shelf.notebook(exchange).newest(Kind.TAKES, id)
                : shelf.notebook(exchange).revision(Kind.TAKES, id, number);
        return (TakeSheet) revision.content();
    }

    private byte[] bytes(Context exchange, TakeSheet sheet) {
        return shelf.notebook(exchange).look(pages -> bytes(pages, sheet));
    }

    private static byte[] bytes(Pages pages, TakeSheet sheet) {
        return pages.read(sheet.midi())
                .orElseThrow(() -> new InvalidContent("/midi", "there is no such file in this notebook"));
    }

    private void keep(Context exchange) throws IOException {
        byte[] bytes = TakeReading.midi(exchange);
        workbench.compute(() -> TakeReading.GUESSING.read(bytes));
        Blob blob = shelf.notebook(exchange).keep(bytes);
        exchange.status(201);
        Answers.json(exchange, blob);
    }

    private static ObjectNode thresholds() {
        ObjectNode json = Answers.object();
        ArrayNode items = json.putArray("items");
        for (Threshold threshold : Threshold.values()) {
            items.addObject()
                    .put("name", threshold.name())
                    .put("label", threshold.label())
                    .put("meaning", threshold.meaning())
                    .put("unit", threshold.unit().name().toLowerCase(Locale.ROOT))
                    .put("standard", threshold.standard())
                    .put("least", threshold.least())
                    .put("most", threshold.most());
        }
        return json;
    }

    private static void exercise(Context exchange) {
        Tuning tuning = Requests.text(exchange, "strings").map(Tuning::parse).orElse(Tuning.VIOLIN);
        double bpm = Requests.decimal("tempo", Requests.text(exchange, "tempo").orElse("60"));
        Answers.json(exchange, Exercise.of(tuning, bpm));
    }

    private void original(Context exchange) {
        TakeSheet sheet = sheet(exchange);
        send(exchange, sheet, "original.mid", "audio/midi", bytes(exchange, sheet));
    }

    private void file(Context exchange, String ending, String type, Function<Cleaning, String> text)
            throws IOException {
        TakeSheet sheet = sheet(exchange);
        byte[] bytes = bytes(exchange, sheet);
        String written =
                workbench.compute(() -> text.apply(TakeReading.of(sheet).clean(bytes)));
        send(exchange, sheet, ending, type + "; charset=utf-8", written.getBytes(StandardCharsets.UTF_8));
    }

    private void file(Context exchange, String ending, String type, MidiExport export) throws IOException {
        TakeSheet sheet = sheet(exchange);
        byte[] bytes = bytes(exchange, sheet);
        byte[] written =
                workbench.compute(() -> export.toBytes(TakeReading.of(sheet).clean(bytes)));
        send(exchange, sheet, ending, type, written);
    }

    private static MidiExport midi(Context exchange) {
        String glide = Requests.text(exchange, "glide").orElse("bend");
        if (!glide.equals("bend") && !glide.equals("plain")) {
            throw new IllegalArgumentException("glide is neither bend nor plain");
        }
        return new MidiExport(glide.equals("bend"));
    }

    private static Function<Cleaning, String> sheetMusic(Context exchange) {
        OptionalDouble tempo = Requests.text(exchange, "tempo")
                .map(text -> OptionalDouble.of(Requests.decimal("tempo", text)))
                .orElse(OptionalDouble.empty());
        int grid = Requests.queryNumber(exchange, "grid", MusicXmlExport.STANDARD.stepsPerQuarter());
        return new MusicXmlExport(tempo, grid, Requests.flag(exchange, "voices"))::toXml;
    }

    private static void send(Context exchange, TakeSheet sheet, String ending, String type, byte[] bytes) {
        exchange.header("Content-Disposition", FileName.attachment(sheet.title(), "take", ending));
        exchange.result(bytes);
        exchange.contentType(type);
    }

    private void onRig(Context exchange) throws IOException {
        UUID id = Requests.id(exchange);
        List<Revision> takes = shelf.notebook(exchange).look(pages -> {
            Notebook.find(pages, Kind.RIGS, Reference.newest(id));
            return pages.usedBy(id).stream()
                    .filter(use -> use.kind() == Kind.TAKES)
                    .map(use -> pages.newest(use.id()).orElseThrow())
                    .toList();
        });
        long start = System.nanoTime();
        List<RigTakes.Played> played = new ArrayList<>();
        for (Revision take : takes) {
            played.add(played(exchange, id, take));
            Limit.COMPUTING_SECONDS.check(TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - start));
        }
        Answers.json(exchange, RigTakes.of(played));
    }

    private RigTakes.Played played(Context exchange, UUID rigId, Revision revision) throws IOException {
        TakeSheet sheet = (TakeSheet) revision.content();
        TakeReading reading = TakeReading.of(sheet);
        int number = sheet.rig().revision();
        Rig rig = (Rig)
                shelf.notebook(exchange).revision(Kind.RIGS, rigId, number).content();
        byte[] bytes = bytes(exchange, sheet);
        TakeReport report = workbench.compute(() -> reading.report(reading.clean(bytes)));
        return new RigTakes.Played(revision.sheetId(), sheet.title(), sheet.day(), number, rig, report);
    }
}
