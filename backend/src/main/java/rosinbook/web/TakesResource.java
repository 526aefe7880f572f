package rosinbook.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.Function;
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
import rosinbook.take.Threshold;
import rosinbook.take.Tuning;

/** {@code /api/bench/takes}, {@code /api/blobs}, {@code /api/exercise}, and what a kept take holds. */
final class TakesResource {
    private final Notebook notebook;

    TakesResource(Notebook notebook) {
        this.notebook = notebook;
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
    private void bench(Context exchange) {
        String type = exchange.contentType();
        if (type != null && type.toLowerCase(Locale.ROOT).startsWith("application/json")) {
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

    private void report(Context exchange, TakeSheet sheet) {
        answer(exchange, TakeReading.of(sheet), bytes(sheet));
    }

    private static void answer(Context exchange, TakeReading reading, byte[] bytes) {
        Cleaning cleaning = reading.clean(bytes);
        Answers.json(exchange, TakeAnswer.of(cleaning, reading.report(cleaning)));
    }

    private TakeSheet sheet(Context exchange) {
        UUID id = Requests.id(exchange);
        int number = Requests.queryNumber(exchange, "revision", 0);
        Revision revision = number == 0 ? notebook.newest(Kind.TAKES, id) : notebook.revision(Kind.TAKES, id, number);
        return (TakeSheet) revision.content();
    }

    private byte[] bytes(TakeSheet sheet) {
        return notebook.look(pages -> bytes(pages, sheet));
    }

    private static byte[] bytes(Pages pages, TakeSheet sheet) {
        return pages.read(sheet.midi())
                .orElseThrow(() -> new InvalidContent("/midi", "there is no such file in this notebook"));
    }

    private void keep(Context exchange) {
        byte[] bytes = TakeReading.midi(exchange);
        TakeReading.GUESSING.read(bytes);
        Blob blob = notebook.keep(bytes);
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
        double bpm =
                TakeReading.number("tempo", Requests.text(exchange, "tempo").orElse("60"));
        Answers.json(exchange, Exercise.of(tuning, bpm));
    }

    private void original(Context exchange) {
        TakeSheet sheet = sheet(exchange);
        send(exchange, sheet, "original.mid", "audio/midi", bytes(sheet));
    }

    private void file(Context exchange, String ending, String type, Function<Cleaning, String> text) {
        TakeSheet sheet = sheet(exchange);
        String written = text.apply(TakeReading.of(sheet).clean(bytes(sheet)));
        send(exchange, sheet, ending, type + "; charset=utf-8", written.getBytes(StandardCharsets.UTF_8));
    }

    private void file(Context exchange, String ending, String type, MidiExport export) {
        TakeSheet sheet = sheet(exchange);
        send(exchange, sheet, ending, type, export.toBytes(TakeReading.of(sheet).clean(bytes(sheet))));
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
                .map(text -> OptionalDouble.of(TakeReading.number("tempo", text)))
                .orElse(OptionalDouble.empty());
        int grid = Requests.queryNumber(exchange, "grid", MusicXmlExport.STANDARD.stepsPerQuarter());
        return new MusicXmlExport(tempo, grid, Requests.flag(exchange, "voices"))::toXml;
    }

    private static void send(Context exchange, TakeSheet sheet, String ending, String type, byte[] bytes) {
        String plain = sheet.title().replaceAll("[^A-Za-z0-9]+", "-").replaceAll("^-|-$", "");
        String name = plain.isEmpty() ? "take" : plain.substring(0, Math.min(60, plain.length()));
        exchange.header("Content-Disposition", "attachment; filename=\"" + name + "." + ending + "\"");
        exchange.result(bytes);
        exchange.contentType(type);
    }

    private void onRig(Context exchange) {
        UUID id = Requests.id(exchange);
        Answers.json(exchange, RigTakes.of(notebook.look(pages -> {
            Notebook.find(pages, Kind.RIGS, Reference.newest(id));
            List<RigTakes.Played> played = new ArrayList<>();
            for (Pages.Use use : pages.usedBy(id)) {
                if (use.kind() == Kind.TAKES) {
                    played.add(played(pages, id, pages.newest(use.id()).orElseThrow()));
                }
            }
            return played;
        })));
    }

    private static RigTakes.Played played(Pages pages, UUID rigId, Revision revision) {
        TakeSheet sheet = (TakeSheet) revision.content();
        TakeReading reading = TakeReading.of(sheet);
        int number = sheet.rig().revision();
        Rig rig = (Rig) pages.revision(rigId, number).orElseThrow().content();
        return new RigTakes.Played(
                revision.sheetId(),
                sheet.title(),
                sheet.day(),
                number,
                rig,
                reading.report(reading.clean(bytes(pages, sheet))));
    }
}
