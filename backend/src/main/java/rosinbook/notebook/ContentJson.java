package rosinbook.notebook;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.type.LogicalType;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import com.fasterxml.jackson.module.paramnames.ParameterNamesModule;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.stream.Collectors;
import org.erdtman.jcs.JsonCanonicalizer;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/** Content as JSON and back, strictly. */
public final class ContentJson {
    /** Longest content that is kept, in bytes of canonical JSON. */
    public static final int MAX_BYTES = Limit.JSON_BYTES.count();

    private static final ObjectMapper MAPPER = mapper();

    private ContentJson() {}

    private static ObjectMapper mapper() {
        JsonMapper mapper = JsonMapper.builder()
                .addModules(new ParameterNamesModule(), new Jdk8Module(), new JavaTimeModule())
                .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
                .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                .enable(DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS)
                .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
                .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
                .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
                .disable(MapperFeature.AUTO_DETECT_IS_GETTERS)
                .build();
        mapper.getFactory().setStreamReadConstraints(new JsonLimits());
        mapper.coercionConfigFor(LogicalType.Textual)
                .setCoercion(CoercionInputShape.Integer, CoercionAction.Fail)
                .setCoercion(CoercionInputShape.Float, CoercionAction.Fail)
                .setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail);
        return mapper;
    }

    /** The strict mapper, for shapes around the content. */
    public static ObjectMapper strict() {
        return MAPPER;
    }

    /**
     * Parses any JSON text within the limits.
     *
     * @throws InvalidContent naming the place, if it is not JSON, too long or too deep, or holds what cannot be kept
     */
    public static JsonNode parse(byte[] json) {
        return parse(json, MAX_BYTES);
    }

    /**
     * Parses any JSON text of at most so many bytes.
     *
     * @throws InvalidContent as {@link #parse(byte[])}
     */
    public static JsonNode parse(byte[] json, int mostBytes) {
        if (json.length > mostBytes) {
            throw InvalidContent.tooMuch(
                    "",
                    new PastLimit(
                            Limit.JSON_BYTES, "this is " + json.length + " bytes long; " + mostBytes + " is the most"));
        }
        try {
            JsonNode tree = MAPPER.readTree(json);
            if (tree == null || tree.isMissingNode()) {
                throw new InvalidContent("", "there is no JSON; send an object");
            }
            refuseUnkeepable("", tree);
            return tree;
        } catch (JsonLimits.Passed problem) {
            throw InvalidContent.tooMuch("", problem.limit());
        } catch (JsonProcessingException problem) {
            throw new InvalidContent("", "this is not JSON that can be kept: " + reason(problem));
        } catch (IOException problem) {
            throw new InvalidContent("", "the JSON could not be read");
        }
    }

    private static String reason(JsonProcessingException problem) {
        JsonLocation where = problem.getLocation();
        String line = problem.getOriginalMessage().lines().findFirst().orElse("");
        String said = Words.shortened(line, 160);
        return where == null ? said : said + " (line " + where.getLineNr() + ", column " + where.getColumnNr() + ")";
    }

    private static void refuseUnkeepable(String pointer, JsonNode node) {
        if (node.isTextual() && !isKeepable(node.textValue())) {
            throw new InvalidContent(pointer, "the text holds a NUL or half a character pair; remove it");
        }
        if (node.isNumber() && !Double.isFinite(node.doubleValue())) {
            throw new InvalidContent(pointer, "the number is too large; give one below 1e308");
        }
        node.properties().forEach(field -> {
            String below = pointer + "/" + escaped(field.getKey());
            if (!isKeepable(field.getKey())) {
                throw new InvalidContent(pointer, "a name holds a NUL or half a character pair; remove it");
            }
            refuseUnkeepable(below, field.getValue());
        });
        if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                refuseUnkeepable(pointer + "/" + i, node.get(i));
            }
        }
    }

    private static boolean isKeepable(String text) {
        return text.indexOf('\0') < 0 && StandardCharsets.UTF_8.newEncoder().canEncode(text);
    }

    /**
     * The content of a sheet of this kind.
     *
     * @throws InvalidContent naming the field that is wrong
     */
    public static Content read(Kind kind, JsonNode json) {
        return read("", json, kind.contentType());
    }

    /**
     * Any record from its JSON.
     *
     * @param prefix pointer of {@code json} in the whole document, or a field's name
     * @throws InvalidContent naming the field that is wrong
     */
    public static <T> T read(String prefix, JsonNode json, Class<T> type) {
        if (json == null || !json.isObject()) {
            throw new InvalidContent(prefix, "an object is needed here");
        }
        try {
            return MAPPER.treeToValue(json, type);
        } catch (UnrecognizedPropertyException problem) {
            throw new InvalidContent(
                    prefix + pointer(problem),
                    "there is no such field; known are "
                            + problem.getKnownPropertyIds().stream()
                                    .map(Object::toString)
                                    .sorted()
                                    .collect(Collectors.joining(", ")));
        } catch (JsonMappingException problem) {
            throw invalid(prefix + pointer(problem), problem);
        } catch (JsonProcessingException problem) {
            throw new InvalidContent(prefix, reason(problem));
        }
    }

    private static InvalidContent invalid(String pointer, JsonMappingException problem) {
        Throwable cause = problem.getCause();
        if (cause instanceof InvalidContent inner) {
            return inner.below(pointer + "/");
        }
        if (cause instanceof PastLimit limit) {
            return InvalidContent.tooMuch(place(pointer, limit.getMessage()), limit);
        }
        if (cause instanceof IllegalArgumentException) {
            String message = String.valueOf(cause.getMessage());
            return new InvalidContent(place(pointer, message), message);
        }
        return new InvalidContent(pointer, reason(problem));
    }

    private static String place(String pointer, String message) {
        String field = message.split(" ", 2)[0];
        boolean named = field.matches("[a-z][A-Za-z0-9]*(/[A-Za-z0-9_.-]+)*") && !field.equals("a");
        return named ? joined(pointer, field) : pointer;
    }

    private static String joined(String pointer, String field) {
        return pointer.endsWith("/" + field) ? pointer : pointer + "/" + field;
    }

    private static String pointer(JsonMappingException problem) {
        return problem.getPath().stream()
                .map(step ->
                        step.getFieldName() != null ? escaped(step.getFieldName()) : Integer.toString(step.getIndex()))
                .map(step -> "/" + step)
                .collect(Collectors.joining());
    }

    private static String escaped(String name) {
        return name.replace("~", "~0").replace("/", "~1");
    }

    /** Content as a JSON tree whose numbers are in their shortest form. */
    public static ObjectNode tree(Object content) {
        return (ObjectNode) parse(canonical(MAPPER.valueToTree(content)).getBytes(StandardCharsets.UTF_8));
    }

    /** Canonical JSON (RFC 8785). */
    public static String canonical(JsonNode json) {
        try {
            return new JsonCanonicalizer(MAPPER.writeValueAsString(json)).getEncodedString();
        } catch (IOException impossible) {
            throw new IllegalStateException("a JSON tree could not be written", impossible);
        }
    }

    /** SHA-256 of a text's UTF-8 bytes, as 64 lower-case hex digits. */
    public static String sha256(String text) {
        return sha256(text.getBytes(StandardCharsets.UTF_8));
    }

    /** SHA-256 of these bytes, in lower-case hexadecimal. */
    public static String sha256(byte[] bytes) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
