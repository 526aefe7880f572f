package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import rosinbook.compare.Pointer;
import rosinbook.notebook.ContentJson;

/** The description of the API, held against what the server really does; schemas are read by networknt's validator. */
final class Description {
    static final JsonNode DOCUMENT = document();
    private static final Set<String> METHODS =
            Set.of("get", "put", "post", "delete", "patch", "head", "options", "trace");
    private static final SchemaRegistry REGISTRY = SchemaRegistry.withDefaultDialect(
            SpecificationVersion.DRAFT_2020_12,
            builder -> builder.schemaRegistryConfig(
                    SchemaRegistryConfig.builder().formatAssertionsEnabled(true).build()));
    private static final Pattern REQUEST_ID =
            Pattern.compile(DOCUMENT.at("/components/schemas/Problem/properties/requestId/pattern")
                    .asText());
    private static final Map<JsonNode, Schema> SCHEMAS = new ConcurrentHashMap<>();

    private Description() {}

    private static JsonNode document() {
        try (InputStream file = Description.class.getResourceAsStream("/openapi.json")) {
            return ContentJson.strict().readTree(file);
        } catch (IOException problem) {
            throw new java.io.UncheckedIOException(problem);
        }
    }

    /** {@code GET /api/{kind}} and so on. */
    static Set<String> operations() {
        Set<String> operations = new TreeSet<>();
        DOCUMENT.path("paths")
                .properties()
                .forEach(path -> path.getValue().fieldNames().forEachRemaining(name -> {
                    if (METHODS.contains(name)) {
                        operations.add(name.toUpperCase(java.util.Locale.ROOT) + " " + path.getKey());
                    }
                }));
        return operations;
    }

    /** The described address that this one is an example of; the most exact one, if there are several. */
    static Optional<String> template(String method, String rawPath) {
        return DOCUMENT.path("paths").properties().stream()
                .filter(path -> path.getValue().has(method.toLowerCase(java.util.Locale.ROOT)))
                .map(Map.Entry::getKey)
                .filter(path -> Pattern.matches(path.replaceAll("\\{[a-z]+}", "[^/]+"), rawPath))
                .min(Comparator.comparingLong(
                        path -> path.chars().filter(letter -> letter == '{').count()));
    }

    /**
     * Fails if an answer has a status, a header, a type or a shape that is not described. Addresses that are not
     * described are left to their own tests.
     */
    static void check(String method, String rawPath, Answer answer) {
        assertTrue(
                REQUEST_ID.matcher(answer.header("Request-Id")).matches(),
                () -> method + " " + rawPath + " was answered without a Request-Id");
        if (answer.status() == 405) {
            checkResponse(DOCUMENT.at("/components/responses/NotAllowed"), answer, method + " " + rawPath);
            return;
        }
        if (isPastLimit(answer)) {
            checkResponse(DOCUMENT.at("/components/responses/PastLimit"), answer, method + " " + rawPath);
            return;
        }
        if (answer.status() == 507 && answer.json().path("type").asText().equals("/problems/disk-full")) {
            checkResponse(DOCUMENT.at("/components/responses/DiskFull"), answer, method + " " + rawPath);
            return;
        }
        if (answer.status() == 503 && answer.header("Content-Type").equals("application/problem+json")) {
            checkResponse(DOCUMENT.at("/components/responses/DatabaseAway"), answer, method + " " + rawPath);
            return;
        }
        Optional<String> template = template(method, rawPath);
        if (template.isEmpty() || answer.header("Content-Security-Policy").isEmpty()) {
            return;
        }
        String where = method + " " + template.get() + " " + answer.status();
        JsonNode response =
                resolved(operation(method, template.get()).path("responses").path("" + answer.status()));
        if (response.isMissingNode() && answer.status() == 400) {
            checkResponse(DOCUMENT.at("/components/responses/NotHttp"), answer, where);
            return;
        }
        assertTrue(response.isObject(), () -> where + " is not described: " + answer.text());
        checkResponse(response, answer, where);
    }

    private static boolean isPastLimit(Answer answer) {
        if (!answer.header("Content-Type").equals("application/problem+json")) {
            return false;
        }
        String type = answer.json().path("type").asText();
        return StreamSupport.stream(
                        DOCUMENT.at("/components/schemas/PastLimit/properties/type/enum")
                                .spliterator(),
                        false)
                .anyMatch(known -> known.asText().equals(type));
    }

    static JsonNode operation(String method, String template) {
        return DOCUMENT.path("paths").path(template).path(method.toLowerCase(java.util.Locale.ROOT));
    }

    private static void checkResponse(JsonNode response, Answer answer, String where) {
        response.path("headers").properties().forEach(header -> {
            String text = answer.header(header.getKey());
            assertTrue(
                    !text.isEmpty() || !header.getValue().path("required").asBoolean(),
                    where + " lacks " + header.getKey());
            if (!text.isEmpty()) {
                assertFits(
                        header.getValue().path("schema"),
                        ContentJson.strict().getNodeFactory().textNode(text),
                        where + " " + header.getKey());
            }
        });
        JsonNode content = response.path("content");
        if (content.isMissingNode()) {
            assertEquals(0, answer.bytes().length, where);
            return;
        }
        String type = answer.header("Content-Type").split(";")[0];
        assertTrue(content.has(type), () -> where + " is described without " + type);
        if (type.endsWith("json")) {
            assertFits(content.path(type).path("schema"), answer.json(), where);
        }
    }

    /** Fails if a body that was accepted is not described. */
    static void checkRequest(String method, String rawPath, JsonNode body) {
        String template = template(method, rawPath).orElseThrow();
        JsonNode schema = operation(method, template).at("/requestBody/content/application~1json/schema");
        assertFits(schema, body, method + " " + template + " was sent");
    }

    private static JsonNode resolved(JsonNode node) {
        return node.has("$ref")
                ? Pointer.parse(node.path("$ref").asText().substring(1)).in(DOCUMENT)
                : node;
    }

    static void assertFits(JsonNode schema, JsonNode instance, String where) {
        List<com.networknt.schema.Error> errors =
                SCHEMAS.computeIfAbsent(schema, Description::schema).validate(instance);
        assertTrue(errors.isEmpty(), () -> where + ": " + errors + " in " + instance);
    }

    private static Schema schema(JsonNode schema) {
        ObjectNode whole = schema.deepCopy();
        whole.set("components", DOCUMENT.path("components"));
        return REGISTRY.getSchema(whole);
    }

    /** What JSON Schema's own schema says about a schema. */
    static List<com.networknt.schema.Error> faults(JsonNode schema) {
        return REGISTRY.getSchema(
                        com.networknt.schema.SchemaLocation.of(SpecificationVersion.DRAFT_2020_12.getDialectId()))
                .validate(schema);
    }
}
