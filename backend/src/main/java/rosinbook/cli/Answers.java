package rosinbook.cli;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.module.paramnames.ParameterNamesModule;

/** How the commands read and print JSON: nothing unknown or double is let in, and only ASCII goes out, for any terminal. */
final class Answers {
    static final ObjectMapper JSON = JsonMapper.builder()
            .addModule(new ParameterNamesModule())
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
            .defaultPropertyInclusion(
                    JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.ALWAYS))
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(JsonWriteFeature.ESCAPE_NON_ASCII)
            .enable(SerializationFeature.INDENT_OUTPUT)
            .build();

    private Answers() {}

    static String json(Object answer) {
        try {
            return JSON.writeValueAsString(answer);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("an answer of our own could not be written as JSON", e);
        }
    }
}
