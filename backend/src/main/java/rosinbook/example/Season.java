package rosinbook.example;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import rosinbook.notebook.ContentJson;

/**
 * The season's steps, and what its symbols stand for.
 *
 * @param today the day it is told for
 */
record Season(LocalDate today) {
    private static final List<String> CHAPTERS = List.of("gear", "pieces", "recipes", "rigs", "sets", "log", "takes");
    private static final String SHEET = "sheet:";
    private static final String DAY = "day:";

    /** Every step, earliest first. */
    List<Step> steps() {
        List<Step> steps = new ArrayList<>();
        for (String chapter : CHAPTERS) {
            read(chapter).forEach(step -> steps.add(ContentJson.strict().convertValue(step, Step.class)));
        }
        steps.sort(Comparator.comparing(this::instant));
        return steps;
    }

    private static JsonNode read(String chapter) {
        String file = "/example/" + chapter + ".json";
        try (InputStream in = Season.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException("this program was built without " + file);
            }
            return ContentJson.parse(in.readAllBytes());
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }

    /** A file of the season. */
    static byte[] file(String name) {
        try (InputStream in = Season.class.getResourceAsStream("/example/takes/" + name)) {
            if (in == null) {
                throw new IllegalStateException("this program was built without the example's " + name);
            }
            return in.readAllBytes();
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }

    Instant instant(Step step) {
        return today.plusDays(step.day()).atTime(step.time()).toInstant(ZoneOffset.UTC);
    }

    /** The same in every notebook. */
    static UUID id(String key) {
        return UUID.nameUUIDFromBytes(("rosinbook example season: " + key).getBytes(StandardCharsets.UTF_8));
    }

    /** A copy in which {@code sheet:} and {@code day:} texts are replaced by the ids and dates they stand for. */
    JsonNode told(JsonNode node) {
        if (!node.isContainerNode()) {
            return node;
        }
        if (node.isArray()) {
            var elements = ContentJson.strict().createArrayNode();
            node.forEach(element -> elements.add(told(element)));
            return elements;
        }
        ObjectNode members = ContentJson.strict().createObjectNode();
        node.properties().forEach(member -> {
            JsonNode value = member.getValue();
            if (value.isTextual()) {
                members.put(member.getKey(), told(value.textValue()));
            } else {
                members.set(member.getKey(), told(value));
            }
        });
        return members;
    }

    private String told(String text) {
        if (text.startsWith(SHEET)) {
            return id(text.substring(SHEET.length())).toString();
        }
        if (text.startsWith(DAY)) {
            return today.plusDays(Integer.parseInt(text.substring(DAY.length())))
                    .toString();
        }
        return text;
    }
}
