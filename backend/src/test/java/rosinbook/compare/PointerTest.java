package rosinbook.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PointerTest {
    /** The document of RFC 6901, section 5. */
    private static final String DOCUMENT = "{\"foo\":[\"bar\",\"baz\"],\"\":0,\"a/b\":1,\"c%d\":2,\"e^f\":3,\"g|h\":4,"
            + "\"i\\\\j\":5,\"k\\\"l\":6,\" \":7,\"m~n\":8}";

    /** RFC 6901, section 5: pointers and what they evaluate to. */
    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '\0',
            delimiter = ';',
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                "/foo/0;\"bar\"",
                "/;0",
                "/a~1b;1",
                "/c%d;2",
                "/e^f;3",
                "/g|h;4",
                "/i\\j;5",
                "/k\"l;6",
                "/ ;7",
                "/m~0n;8"
            })
    void finds_what_the_standard_says(String pointer, String value) throws JsonProcessingException {
        JsonNode document = new ObjectMapper().readTree(DOCUMENT);
        assertEquals(value, Pointer.parse(pointer).in(document).toString());
        assertEquals(pointer, Pointer.parse(pointer).toString());
    }

    @Test
    void the_empty_pointer_is_the_whole_document() throws JsonProcessingException {
        JsonNode document = new ObjectMapper().readTree(DOCUMENT);
        assertEquals(document, Pointer.parse("").in(document));
    }

    @Test
    void a_text_without_a_leading_slash_is_refused() {
        var problem = assertThrows(IllegalArgumentException.class, () -> Pointer.parse("foo"));
        assertTrue(problem.getMessage().contains("begins with '/'"), problem.getMessage());
    }
}
