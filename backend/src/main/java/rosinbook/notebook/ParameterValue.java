package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;
import rosinbook.sound.NoteValue;

/** What a parameter is set to. In JSON: a number, a text, true or false, or {@code {"note": "dotted eighth"}}. */
public sealed interface ParameterValue {
    /** @throws IllegalArgumentException if the JSON is none of the four shapes */
    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static ParameterValue of(JsonNode json) {
        if (json.isNumber()) {
            return new Number(json.doubleValue());
        }
        if (json.isTextual()) {
            return new Text(json.textValue());
        }
        if (json.isBoolean()) {
            return new OnOff(json.booleanValue());
        }
        if (json.isObject() && json.size() == 1 && json.path("note").isTextual()) {
            return new Note(NoteValue.parse(json.path("note").textValue()));
        }
        throw new IllegalArgumentException(
                "a setting must be a number, a text, true or false, or {\"note\": \"dotted eighth\"}");
    }

    /** As a player would write it, without unit. */
    String describe();

    /** A number in the parameter's unit. */
    record Number(@JsonValue double amount) implements ParameterValue {
        public Number {
            Require.finite("a setting", amount);
        }

        @Override
        public String describe() {
            return Words.number(amount);
        }
    }

    /** A choice by its word. */
    record Text(@JsonValue String words) implements ParameterValue {
        public Text {
            Require.limited("a setting", words, 500);
        }

        @Override
        public String describe() {
            return words;
        }
    }

    /** A switch. */
    record OnOff(@JsonValue boolean on) implements ParameterValue {
        @Override
        public String describe() {
            return on ? "on" : "off";
        }
    }

    /** A time by its note value. */
    record Note(NoteValue value) implements ParameterValue {
        @JsonValue
        Map<String, NoteValue> json() {
            return Map.of("note", value);
        }

        @Override
        public String describe() {
            return value.toString();
        }
    }
}
