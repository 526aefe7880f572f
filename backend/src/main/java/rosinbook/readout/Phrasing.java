package rosinbook.readout;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import rosinbook.circuit.MeterReading;
import rosinbook.circuit.PinRole;
import rosinbook.circuit.Via;
import rosinbook.compare.Pointer;
import rosinbook.level.LevelSummary;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Parameter;
import rosinbook.notebook.Vocabulary;
import rosinbook.notebook.Words;
import rosinbook.sound.NoteValue;

/**
 * How places and values of a content are put into words.
 *
 * @param titles names of other sheets
 * @param vocabulary the synth's own words
 * @param tempoBpm the piece's tempo, so that note values can be told in milliseconds; empty if unknown
 */
public record Phrasing(Titles titles, Vocabulary vocabulary, OptionalDouble tempoBpm) {
    /** For contents that use no synth's vocabulary. */
    public static Phrasing plain(Titles titles) {
        return new Phrasing(titles, Vocabulary.EMPTY, OptionalDouble.empty());
    }

    /** A value that is read as one, although it is an object. */
    static boolean isOneValue(Pointer at, JsonNode node) {
        return node.isObject()
                && !isKeyedByThePlayer(at)
                && (node.path("carries").isTextual()
                        || node.path("via").isTextual()
                        || node.path("read").isTextual()
                        || node.path("measuredOn").isTextual()
                        || node.path("note").isTextual() && node.size() == 1
                        || node.path("id").isTextual() && node.size() <= 2);
    }

    /** In parameters any name may occur, also those by which values are told apart elsewhere. */
    private static boolean isKeyedByThePlayer(Pointer at) {
        List<String> steps = at.steps();
        return !steps.isEmpty() && steps.get(steps.size() - 1).equals("parameters");
    }

    private static boolean isRoute(Pointer at) {
        List<String> steps = at.steps();
        return steps.size() >= 2 && steps.get(steps.size() - 2).equals("routes");
    }

    /** The place in words, outermost first. The document tells what entries are called. */
    List<String> where(Pointer at, JsonNode document) {
        List<String> words = new ArrayList<>();
        List<String> steps = at.steps();
        for (int i = 0; i < steps.size(); i++) {
            String field = steps.get(i);
            Optional<String> entry = Labels.entryOf(field);
            if (entry.isPresent() && i + 1 < steps.size()) {
                i++;
                Pointer place = new Pointer(steps.subList(0, i + 1));
                words.add(entryName(field, entry.get(), steps.get(i), place.in(document)));
            } else if (field.equals("parameters") && i + 1 < steps.size()) {
                i++;
                words.add(parameter(new Pointer(steps.subList(0, i + 1)), document)
                        .map(Parameter::label)
                        .orElse(steps.get(i)));
            } else if (!isWrapper(field)) {
                words.add(words.isEmpty() ? capital(name(field)) : name(field));
            }
        }
        return words;
    }

    private static boolean isWrapper(String field) {
        return field.equals("settings") || field.equals("adapter") || field.equals("connector") || field.equals("via");
    }

    private static String name(String field) {
        return field.equals("straight") ? "straight sound" : Labels.name(field);
    }

    private String entryName(String container, String word, String key, JsonNode entry) {
        return switch (container) {
            case "voices" -> entry.path("name").asText(word + " " + key);
            case "effects" -> effectName(entry.path("type").asText(key));
            case "items" -> title(entry.path("piece").asText()).orElse(word);
            case "controlLines" -> entry.path("label").asText(key);
            default -> word + " " + key;
        };
    }

    private String effectName(String type) {
        Vocabulary.EffectType known = vocabulary.effects().get(type);
        return known == null ? capital(type) : known.label();
    }

    /** The parameter that a place sets, if the synth's vocabulary knows it. */
    Optional<Parameter> parameter(Pointer at, JsonNode document) {
        List<String> steps = at.steps();
        int here = steps.lastIndexOf("parameters");
        if (here < 1 || here + 1 >= steps.size()) {
            return Optional.empty();
        }
        String key = steps.get(here + 1);
        if (steps.get(here - 1).equals("straight")) {
            return Optional.ofNullable(vocabulary.straight().get(key));
        }
        if (here < 2) {
            return Optional.empty();
        }
        if (steps.get(here - 2).equals("voices")) {
            return Optional.ofNullable(vocabulary.voice().get(key));
        }
        JsonNode effect = new Pointer(steps.subList(0, here)).in(document);
        return Optional.ofNullable(vocabulary.effects().get(effect.path("type").asText()))
                .map(type -> type.parameters().get(key));
    }

    /** Unit of the value at a place; empty if it has none. */
    String unit(Pointer at, JsonNode document, JsonNode value) {
        if (!value.isNumber()) {
            return "";
        }
        List<String> steps = at.steps();
        return parameter(at, document)
                .map(Parameter::unit)
                .orElseGet(() -> steps.isEmpty() ? "" : Labels.unit(steps.get(steps.size() - 1)));
    }

    /** A value in words, without its unit; an entry with several values in one line. */
    String value(Pointer at, JsonNode document, JsonNode value) {
        if (value.isNumber()) {
            return Words.number(value.doubleValue());
        }
        if (value.isBoolean()) {
            return value.booleanValue() ? "on" : "off";
        }
        if (value.isTextual()) {
            return isId(at) ? title(value.textValue()).orElse("something unknown") : value.textValue();
        }
        if (value.isArray()) {
            return StreamSupport.stream(value.spliterator(), false)
                    .map(element -> value(at, document, element))
                    .collect(Collectors.joining(", "));
        }
        if (isOneValue(at, value)) {
            return oneValue(value);
        }
        if (isMeasuring(at)) {
            return value.size() + (value.size() == 1 ? " entry" : " entries");
        }
        return isRoute(at) ? route(value) : entry(at, document, value);
    }

    /** A whole table of readings says nothing as one line; how many there are does. */
    private static boolean isMeasuring(Pointer at) {
        List<String> steps = at.steps();
        return steps.equals(List.of("probe")) || steps.equals(List.of("readings"));
    }

    private static String route(JsonNode route) {
        String from = route.has("instrumentPin")
                ? "pin " + route.path("instrumentPin").asText()
                : "";
        String to =
                route.has("synthPin") ? "synth pin " + route.path("synthPin").asText() : "";
        String ends = from.isEmpty() || to.isEmpty() ? from + to : from + " to " + to;
        return ends + ", "
                + ContentJson.strict()
                        .convertValue(route.path("via"), Via.class)
                        .describe();
    }

    private static boolean isId(Pointer at) {
        List<String> steps = at.steps();
        int size = steps.size();
        if (size == 0 || size > 1 && steps.get(size - 2).equals("parameters")) {
            return false;
        }
        return steps.get(size - 1).equals("piece") || steps.get(size - 1).equals("synth");
    }

    private String oneValue(JsonNode value) {
        if (value.path("carries").isTextual()) {
            return ContentJson.strict().convertValue(value, PinRole.class).describe();
        }
        if (value.path("via").isTextual()) {
            return ContentJson.strict().convertValue(value, Via.class).describe();
        }
        if (value.has("measuredOn")) {
            return ContentJson.strict().convertValue(value, LevelSummary.class).describe();
        }
        if (value.has("read")) {
            return ContentJson.strict().convertValue(value, MeterReading.class).describe();
        }
        if (value.has("note")) {
            NoteValue note = NoteValue.parse(value.path("note").textValue());
            return tempoBpm.isEmpty()
                    ? note.toString()
                    : note + " (" + Words.number(Math.round(note.millis(tempoBpm.getAsDouble()) * 10) / 10.0)
                            + " ms at " + Words.number(tempoBpm.getAsDouble()) + " bpm)";
        }
        String title = title(value.path("id").asText()).orElse("something unknown");
        return value.has("revision")
                ? title + ", revision " + value.path("revision").asInt()
                : title;
    }

    private String entry(Pointer at, JsonNode document, JsonNode value) {
        List<String> parts = new ArrayList<>();
        for (Map.Entry<String, JsonNode> member : value.properties()) {
            String field = member.getKey();
            boolean told =
                    field.equals("order") || field.equals("name") || field.equals("type") || field.equals("piece");
            JsonNode below = member.getValue();
            if (told
                    || below.isObject() && below.isEmpty()
                    || below.isTextual() && below.textValue().isEmpty()) {
                continue;
            }
            parts.add(part(at.plus(field), document, field, below));
        }
        return String.join(" · ", parts);
    }

    private String part(Pointer at, JsonNode document, String field, JsonNode value) {
        String text = value(at, document, value);
        if (value.isObject() && !isOneValue(at, value)) {
            return text;
        }
        if (field.equals("on")) {
            return text;
        }
        String unit = unit(at, document, value);
        String label = parameter(at, document).map(Parameter::label).orElse(Labels.name(field));
        return label + " " + text + (unit.isEmpty() ? "" : " " + unit);
    }

    private Optional<String> title(String id) {
        try {
            return titles.of(UUID.fromString(id));
        } catch (IllegalArgumentException notAnId) {
            return Optional.empty();
        }
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1);
    }
}
