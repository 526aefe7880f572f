package rosinbook.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.StringReader;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class ComparisonTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @Property(seed = "8017")
    void applying_a_comparison_to_the_older_gives_the_newer(
            @ForAll("objects") ObjectNode was, @ForAll("objects") ObjectNode now) {
        Comparison comparison = Comparison.of(was, now);
        assertEquals(now, comparison.applyTo(was));
        assertEquals(was, comparison.reversed().applyTo(now));
        assertEquals(was.equals(now), comparison.isEmpty());
    }

    /** RFC 6902, applied by an independent library (Eclipse Parsson, Jakarta JSON Processing). */
    @Property(seed = "8017")
    void the_exported_json_patch_does_the_same_in_an_independent_library(
            @ForAll("objects") ObjectNode was, @ForAll("objects") ObjectNode now) throws JsonProcessingException {
        String patch = JSON.writeValueAsString(Comparison.of(was, now).toJsonPatch());
        JsonObject result = Json.createPatch(
                        Json.createReader(new StringReader(patch)).readArray())
                .apply(Json.createReader(new StringReader(JSON.writeValueAsString(was)))
                        .readObject());
        assertEquals(now, JSON.readTree(result.toString()));
    }

    @Provide
    Arbitrary<ObjectNode> objects() {
        return JsonTrees.objects();
    }

    @Test
    void names_the_innermost_place_that_differs() throws JsonProcessingException {
        JsonNode was = JSON.readTree("{\"strings\":{\"1\":{\"sensitivity\":20,\"input\":1}},\"gone\":true}");
        JsonNode now = JSON.readTree("{\"strings\":{\"1\":{\"sensitivity\":22,\"input\":1}},\"new\":[1]}");
        Comparison comparison = Comparison.of(was, now);
        assertEquals(
                "[/gone, /new, /strings/1/sensitivity]",
                comparison.changes().stream().map(Change::at).toList().toString());
        assertTrue(comparison.changes().get(0).now().isEmpty(), "left out");
        assertTrue(comparison.changes().get(1).was().isEmpty(), "added");
    }
}
