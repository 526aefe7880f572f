package rosinbook.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rosinbook.level.LevelMeasurement;
import rosinbook.level.LevelOptions;
import rosinbook.level.LineFit;
import rosinbook.level.Mains;
import rosinbook.level.SensitivityAdvice;
import rosinbook.level.SensitivityScale;
import rosinbook.level.TriggerWindow;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Synth;
import rosinbook.pitch.Note;

/**
 * What is asked of the level bench beside the recording: tuning, inputs, mains, margin, and the synth's scale.
 *
 * @param rig empty if no rig was named
 * @param scale empty if no rig was named
 */
record LevelQuestion(
        Optional<LevelRig> rig, LevelOptions options, Optional<SensitivityScale> scale, OptionalDouble threshold) {
    /** What a step is taken for where nobody measured it, in dB (no source: a place to begin). */
    private static final double ASSUMED_STEP_DB = 1;

    static LevelQuestion of(Context exchange, Notebook notebook) {
        Optional<LevelRig> rig = Requests.text(exchange, "rig")
                .map(text -> notebook.look(pages -> LevelRig.of(pages, Requests.reference(exchange, "rig"))));
        List<Note> notes = Requests.text(exchange, "strings")
                .map(text -> Arrays.stream(text.split(",")).map(Note::parse).toList())
                .orElseGet(() -> rig.map(LevelRig::openNotes).orElse(List.of()));
        List<Integer> inputs = Requests.text(exchange, "inputs")
                .map(text -> Arrays.stream(text.split(","))
                        .map(each -> (int) Requests.decimal("inputs", each))
                        .toList())
                .orElseGet(() -> rig.map(LevelRig::inputs).orElse(List.of()));
        LevelOptions options = new LevelOptions(
                notes,
                inputs,
                Requests.text(exchange, "mains")
                        .map(text -> Mains.of((int) Requests.decimal("mains", text)))
                        .orElse(Mains.FIND),
                Requests.text(exchange, "margin")
                        .map(text -> Requests.decimal("margin", text))
                        .orElse(TriggerWindow.USUAL_MARGIN_DB),
                List.of(),
                rig.map(LevelRig::referenceHertz).orElse(440.0),
                1200);
        return new LevelQuestion(
                rig,
                options,
                rig.map(known -> scale(known.scale(), points(exchange))),
                Requests.text(exchange, "threshold")
                        .map(text -> OptionalDouble.of(Requests.decimal("threshold", text)))
                        .orElse(OptionalDouble.empty()));
    }

    /** {@code steps=10:-44,20:-36}: the level the same stroke showed at two or more settings. */
    private static List<LineFit.Point> points(Context exchange) {
        List<LineFit.Point> points = new ArrayList<>();
        Requests.text(exchange, "steps").ifPresent(text -> {
            for (String pair : text.split(",")) {
                String[] parts = pair.split(":", -1);
                if (parts.length != 2) {
                    throw new IllegalArgumentException(
                            "steps is no list of settings and levels; write it like 10:-44,20:-36");
                }
                points.add(new LineFit.Point(Requests.decimal("steps", parts[0]), Requests.decimal("steps", parts[1])));
            }
        });
        return points;
    }

    private static SensitivityScale scale(Synth.SensitivityScale scale, List<LineFit.Point> points) {
        double start = scale.customaryStart() == null ? (scale.min() + scale.max()) / 2 : scale.customaryStart();
        if (!points.isEmpty()) {
            return SensitivityScale.measured(scale.min(), scale.max(), scale.step(), points, start);
        }
        boolean isKnown = scale.decibelsPerStep() != null && scale.decibelsPerStep() != 0;
        double stepDb = isKnown ? scale.decibelsPerStep() : ASSUMED_STEP_DB;
        return SensitivityScale.assumed(scale.min(), scale.max(), scale.step(), stepDb, start);
    }

    List<SensitivityAdvice> advice(LevelMeasurement measurement) {
        return scale.map(known ->
                        SensitivityAdvice.of(measurement.windows(), known, threshold, measurement.peakDbfsByString()))
                .orElse(List.of());
    }

    /** Where the decibels per step come from, so that the page can say so. */
    Optional<ObjectNode> scaleInWords() {
        return scale.map(known -> {
            ObjectNode json = Answers.object();
            Double onSheet = rig.orElseThrow().scale().decibelsPerStep();
            boolean isOnSheet = onSheet != null && onSheet != 0;
            json.put("decibelsPerStep", known.decibelsPerStep());
            json.put("customaryStart", known.customaryStart());
            json.put("from", known.fit().isPresent() ? "measured" : isOnSheet ? "synth" : "assumed");
            known.fit().ifPresent(fit -> json.set("fit", Answers.tree(fit)));
            json.put("thresholdAssumed", threshold.isEmpty());
            return json;
        });
    }
}
