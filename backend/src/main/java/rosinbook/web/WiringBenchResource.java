package rosinbook.web;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rosinbook.circuit.Adapter;
import rosinbook.circuit.BenchSheet;
import rosinbook.circuit.DividerChoice;
import rosinbook.circuit.DividerGoal;
import rosinbook.circuit.DividerSearch;
import rosinbook.circuit.Drawing;
import rosinbook.circuit.ImpossibleDividerException;
import rosinbook.circuit.Netlist;
import rosinbook.circuit.Parts;
import rosinbook.circuit.PartsList;
import rosinbook.circuit.ProbeInference;
import rosinbook.circuit.ProbeTable;
import rosinbook.circuit.Side;
import rosinbook.circuit.Wiring;
import rosinbook.circuit.WiringFile;
import rosinbook.limit.PastLimit;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Instrument;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Rig;
import rosinbook.notebook.RigWiring;

/** {@code /api/bench/divider|probe|adapter|wiring}: the wiring bench. Nothing is kept. */
final class WiringBenchResource {
    private static final int DIVIDERS = 11;

    private final Shelf shelf;
    private final Workbench workbench;

    WiringBenchResource(Shelf shelf, Workbench workbench) {
        this.shelf = shelf;
        this.workbench = workbench;
    }

    void register(RoutesConfig routes) {
        routes.post("/api/bench/divider", this::divider);
        routes.post("/api/bench/probe", this::probe);
        routes.post("/api/bench/adapter", this::adapter);
        routes.post("/api/bench/wiring", this::wiring);
    }

    /** What the search for a divider answers. */
    record Dividers(DividerChoice best, List<DividerChoice> alternatives) {}

    /** What the check of a wiring answers: the bench sheet's fields, and what can be taken along. */
    record Worked(
            @JsonUnwrapped BenchSheet sheet,
            Adapter adapter,
            boolean isProposed,
            List<String> remarks,
            Map<String, String> drawings,
            String netlist,
            String partsCsv,
            WiringFile file) {}

    private void divider(Context exchange) {
        ObjectNode body = Requests.body(
                exchange,
                "supplyVolts",
                "targetVolts",
                "loadOhms",
                "series",
                "tolerancePercent",
                "supplyTolerancePercent",
                "maxMilliamps",
                "ratingMilliwatts",
                "maxRatingShare");
        for (String needed : List.of("supplyVolts", "targetVolts")) {
            if (!body.hasNonNull(needed)) {
                throw new InvalidContent("/" + needed, needed + " is missing; give volts");
            }
        }
        DividerGoal goal = ContentJson.read("", body, DividerGoal.class);
        try {
            List<DividerChoice> choices = DividerSearch.rank(goal, DIVIDERS);
            Answers.json(exchange, new Dividers(choices.get(0), choices.subList(1, choices.size())));
        } catch (ImpossibleDividerException impossible) {
            Problem problem = new Problem(
                    422, "impossible-divider", "No two resistors can do this", impossible.getMessage() + ".");
            impossible.nearest().ifPresent(nearest -> problem.details().set("nearest", Answers.tree(nearest)));
            throw problem;
        }
    }

    private void probe(Context exchange) throws IOException {
        ObjectNode body = Requests.body(exchange, "strings", "pins", "rig");
        ProbeTable table = probeTable(exchange, body);
        Answers.json(exchange, workbench.compute(() -> ProbeInference.of(table)));
    }

    private ProbeTable probeTable(Context exchange, ObjectNode body) {
        Optional<Reference> rig = rig(body, "strings", "pins");
        if (rig.isEmpty()) {
            return ContentJson.read("", body, ProbeTable.class);
        }
        Instrument instrument = shelf.notebook(exchange).look(pages -> instrument(pages, rig.get()));
        if (instrument.probe() == null) {
            throw new InvalidContent(
                    "/rig", "the instrument of this rig has no meter readings of its pins; measure them first");
        }
        return new ProbeTable(instrument.strings().size(), instrument.probe());
    }

    private static Instrument instrument(Pages pages, Reference reference) {
        Rig rig = (Rig) Notebook.find(pages, Kind.RIGS, reference).content();
        return (Instrument)
                Notebook.find(pages, Kind.INSTRUMENTS, rig.instrument()).content();
    }

    private void adapter(Context exchange) throws IOException {
        ObjectNode body = Requests.body(exchange, "rig", "instrument", "synth", "wantedVolts", "parts");
        Parts parts = Requests.optional(body, "parts")
                .map(json -> ContentJson.read("/parts", json, Parts.class))
                .orElse(null);
        body.remove("parts");
        WiringFile file = wiringFile(exchange, body);
        Answers.json(exchange, workbench.compute(() -> file.proposal(parts)));
    }

    private void wiring(Context exchange) throws IOException {
        ObjectNode body = Requests.body(
                exchange, "rig", "format", "version", "instrument", "synth", "adapter", "wantedVolts", "readings");
        WiringFile file = wiringFile(exchange, body);
        Answers.json(exchange, workbench.compute(() -> worked(file.worked())));
    }

    private static Worked worked(WiringFile.Worked worked) {
        Wiring wiring = worked.wiring();
        BenchSheet sheet = BenchSheet.of(wiring);
        return new Worked(
                sheet,
                wiring.adapter(),
                worked.isProposed(),
                worked.remarks(),
                Map.of(
                        "mating", Drawing.of(wiring, Side.MATING, sheet.findings()),
                        "solder", Drawing.of(wiring, Side.SOLDER, sheet.findings())),
                Netlist.of(wiring),
                PartsList.csv(wiring),
                WiringFile.of(wiring.instrument(), wiring.synth(), wiring.adapter(), wiring.readings()));
    }

    private WiringFile wiringFile(Context exchange, ObjectNode body) {
        Optional<Reference> rig = rig(body, "instrument", "synth", "adapter", "readings");
        if (rig.isEmpty()) {
            return ContentJson.read("", body, WiringFile.class);
        }
        WiringFile kept;
        try {
            kept = shelf.notebook(exchange).look(pages -> RigWiring.find(pages, rig.get()));
        } catch (InvalidContent unreadable) {
            throw unreadable;
        } catch (PastLimit tooMuch) {
            throw tooMuch;
        } catch (IllegalArgumentException noConnector) {
            throw new InvalidContent("/rig", noConnector.getMessage());
        }
        Optional<JsonNode> wanted = Requests.optional(body, "wantedVolts");
        if (wanted.isEmpty()) {
            return kept;
        }
        ObjectNode whole = Answers.tree(kept);
        whole.set("wantedVolts", wanted.get());
        return ContentJson.read("", whole, WiringFile.class);
    }

    /** {@code id} or {@code id@revision}; empty if everything stands in the request itself. */
    private static Optional<Reference> rig(ObjectNode body, String... instead) {
        String text = Requests.string(body, "rig");
        if (text.isEmpty()) {
            body.remove("rig");
            return Optional.empty();
        }
        for (String member : instead) {
            if (body.hasNonNull(member)) {
                throw new InvalidContent("/" + member, member + " stands beside rig; send the one or the other");
            }
        }
        return Optional.of(Requests.reference("/rig", text));
    }
}
