package rosinbook.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MergePatchTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** RFC 7396, appendix A: every row. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\0',
            value = {
                "{\"a\":\"b\"} | {\"a\":\"c\"} | {\"a\":\"c\"}",
                "{\"a\":\"b\"} | {\"b\":\"c\"} | {\"a\":\"b\",\"b\":\"c\"}",
                "{\"a\":\"b\"} | {\"a\":null} | {}",
                "{\"a\":\"b\",\"b\":\"c\"} | {\"a\":null} | {\"b\":\"c\"}",
                "{\"a\":[\"b\"]} | {\"a\":\"c\"} | {\"a\":\"c\"}",
                "{\"a\":\"c\"} | {\"a\":[\"b\"]} | {\"a\":[\"b\"]}",
                "{\"a\":{\"b\":\"c\"}} | {\"a\":{\"b\":\"d\",\"c\":null}} | {\"a\":{\"b\":\"d\"}}",
                "{\"a\":[{\"b\":\"c\"}]} | {\"a\":[1]} | {\"a\":[1]}",
                "[\"a\",\"b\"] | [\"c\",\"d\"] | [\"c\",\"d\"]",
                "{\"a\":\"b\"} | [\"c\"] | [\"c\"]",
                "{\"a\":\"foo\"} | null | null",
                "{\"a\":\"foo\"} | \"bar\" | \"bar\"",
                "{\"e\":null} | {\"a\":1} | {\"e\":null,\"a\":1}",
                "[1,2] | {\"a\":\"b\",\"c\":null} | {\"a\":\"b\"}",
                "{} | {\"a\":{\"bb\":{\"ccc\":null}}} | {\"a\":{\"bb\":{}}}"
            })
    void applies_as_the_standard_says(String original, String patch, String result) throws JsonProcessingException {
        JsonNode target = JSON.readTree(original);
        assertEquals(JSON.readTree(result), MergePatch.apply(target, JSON.readTree(patch)));
        assertEquals(JSON.readTree(original), target, "the original is not altered");
    }

    @Property(seed = "8017")
    void applying_a_patch_twice_is_applying_it_once(
            @ForAll("objects") ObjectNode target, @ForAll("objects") ObjectNode patch) {
        JsonNode once = MergePatch.apply(target, patch);
        assertEquals(once, MergePatch.apply(once, patch));
    }

    @Provide
    net.jqwik.api.Arbitrary<ObjectNode> objects() {
        return JsonTrees.objects();
    }
}
