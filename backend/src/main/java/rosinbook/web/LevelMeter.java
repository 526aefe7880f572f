package rosinbook.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import rosinbook.level.LevelBench;
import rosinbook.level.LevelMeasurement;
import rosinbook.level.LevelOptions;
import rosinbook.level.LevelReading;
import rosinbook.level.Levels;
import rosinbook.level.MeterReadings;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;
import rosinbook.notebook.InvalidContent;

/**
 * A meter's readings as they are sent: {@code {"readings": [{"string", "loudness", "input", "decibels"}], "noise": […],
 * "decibelsPerUnit": n}}; with {@code decibelsPerUnit} the readings are in the meter's own units.
 */
final class LevelMeter {
    private LevelMeter() {}

    static LevelMeasurement measure(Context exchange, LevelOptions options) {
        ObjectNode body = Requests.body(exchange, "readings", "noise", "decibelsPerUnit");
        JsonNode given = body.path("readings");
        if (!given.isArray() || given.isEmpty()) {
            throw new InvalidContent("/readings", "give readings: string, loudness, input and decibels");
        }
        if (given.size() > Limit.ENTRIES.most()) {
            throw InvalidContent.tooMuch("/readings", new PastLimit(Limit.ENTRIES));
        }
        List<LevelReading> readings = new ArrayList<>();
        for (int i = 0; i < given.size(); i++) {
            readings.add(reading("/readings/" + i, given.get(i)));
        }
        int strings = options.openNotes().isEmpty()
                ? readings.stream().mapToInt(LevelReading::string).max().orElseThrow()
                : options.openNotes().size();
        List<Integer> inputOfString = options.inputOfString().isEmpty()
                ? IntStream.rangeClosed(1, strings).boxed().toList()
                : options.inputOfString();
        int inputs = Math.max(
                inputOfString.stream().mapToInt(Integer::intValue).max().orElseThrow(),
                readings.stream().mapToInt(LevelReading::input).max().orElseThrow());
        return LevelBench.fromLevels(levels(body, readings, inputOfString, inputs), options);
    }

    /** Lists of all strings and all inputs are made of the highest that are named. */
    private static LevelReading reading(String pointer, JsonNode given) {
        LevelReading reading = LevelsResource.record(pointer, given, LevelReading.class);
        try {
            Limit.CHANNELS.check(Math.max(reading.string(), reading.input()));
        } catch (PastLimit tooMany) {
            throw InvalidContent.tooMuch(pointer, tooMany);
        }
        return reading;
    }

    private static Levels levels(
            ObjectNode body, List<LevelReading> readings, List<Integer> inputOfString, int inputs) {
        List<Double> noise = new ArrayList<>();
        for (JsonNode each : Requests.list(body, "noise")) {
            if (!each.isNumber()) {
                throw new InvalidContent("/noise", "noise is a list of numbers, one per input");
            }
            noise.add(each.doubleValue());
        }
        JsonNode unit = body.path("decibelsPerUnit");
        if (!unit.isMissingNode() && !unit.isNumber()) {
            throw new InvalidContent("/decibelsPerUnit", "decibelsPerUnit is a number above 0");
        }
        return unit.isMissingNode()
                ? MeterReadings.inDecibels(readings, inputOfString, inputs, noise)
                : MeterReadings.inUnits(readings, inputOfString, inputs, noise, unit.doubleValue());
    }
}
