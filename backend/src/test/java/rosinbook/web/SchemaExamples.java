package rosinbook.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rosinbook.compare.Pointer;
import rosinbook.fuzz.Odd;

/** Makes examples of what the description of the API allows, nearly always valid; different ones by chance. */
final class SchemaExamples {
    private static final int DEEPEST = 8;

    private final Odd odd;
    private final List<String> ids;

    /** @param ids what stands where an id is wanted */
    SchemaExamples(Odd odd, List<String> ids) {
        this.odd = odd;
        this.ids = ids;
    }

    JsonNode of(JsonNode schema) {
        return of(schema, DEEPEST);
    }

    private JsonNode of(JsonNode schema, int deep) {
        JsonNodeFactory make = JsonNodeFactory.instance;
        if (schema.has("$ref")) {
            return of(Pointer.parse(schema.path("$ref").asText().substring(1)).in(Description.DOCUMENT), deep);
        }
        for (String choice : List.of("oneOf", "anyOf")) {
            if (schema.has(choice)) {
                return of(schema.path(choice).get(odd.up(schema.path(choice).size())), deep);
            }
        }
        if (schema.has("const")) {
            return schema.get("const");
        }
        if (schema.has("enum")) {
            return schema.path("enum").get(odd.up(schema.path("enum").size()));
        }
        if (schema.has("allOf")
                || schema.has("properties")
                || schema.path("type").asText().equals("object")) {
            return object(schema, deep);
        }
        JsonNode type = schema.path("type");
        String name = type.isArray() ? type.get(0).asText() : type.asText();
        return switch (name) {
            case "array" -> array(schema, deep);
            case "integer" -> make.numberNode((long) number(schema));
            case "number" -> make.numberNode(number(schema));
            case "boolean" -> make.booleanNode(odd.once(2));
            case "null" -> make.nullNode();
            default -> make.textNode(text(schema));
        };
    }

    private ObjectNode object(JsonNode schema, int deep) {
        ObjectNode made = JsonNodeFactory.instance.objectNode();
        for (JsonNode part : schema.path("allOf")) {
            if (of(part, deep) instanceof ObjectNode members) {
                made.setAll(members);
            }
        }
        List<String> required = new java.util.ArrayList<>();
        schema.path("required").forEach(each -> required.add(each.asText()));
        Map<String, JsonNode> properties = new TreeMap<>();
        schema.path("properties").properties().forEach(each -> properties.put(each.getKey(), each.getValue()));
        properties.forEach((name, property) -> {
            if (required.contains(name) || deep > 0 && odd.once(2)) {
                made.set(name, of(property, deep - 1));
            }
        });
        JsonNode more = schema.path("additionalProperties");
        if (more.isObject() && deep > 0) {
            for (int i = odd.up(4); i > 0; i--) {
                String key = schema.has("propertyNames") ? text(schema.path("propertyNames")) : "k" + i;
                made.set(odd.once(2) ? "" + i : key, of(more, deep - 1));
            }
        }
        return made;
    }

    private ArrayNode array(JsonNode schema, int deep) {
        ArrayNode made = JsonNodeFactory.instance.arrayNode();
        int least = schema.path("minItems").asInt(0);
        int count = deep <= 0 ? least : least + odd.up(3);
        for (int i = 0; i < count; i++) {
            made.add(of(schema.path("items"), deep - 1));
        }
        return made;
    }

    private double number(JsonNode schema) {
        double least =
                schema.path("minimum").asDouble(schema.path("exclusiveMinimum").asDouble(0));
        double most = schema.path("maximum").asDouble(Math.max(least, 1) * 10);
        return odd.once(3) ? odd.any(List.of(least, most)) : least + (most - least) * odd.up(101) / 100;
    }

    private String text(JsonNode schema) {
        String format = schema.path("format").asText() + schema.path("pattern").asText();
        if (format.contains("uuid") || format.contains("[0-9a-f]{8}")) {
            return odd.any(ids) + (odd.once(4) ? "@1" : "");
        }
        if (format.startsWith("date-time")) {
            return "2026-12-31T22:00:00Z";
        }
        if (format.startsWith("date")) {
            return "2026-11-12";
        }
        if (format.contains("A-G") || format.contains("#b")) {
            return odd.any(List.of("E5", "A4", "D4", "G3", "C3"));
        }
        return odd.any(List.of("1", "2", "a", "Copper Weather", "level", "4/4", "x1"));
    }
}
