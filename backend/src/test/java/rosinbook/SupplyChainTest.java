package rosinbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.cyclonedx.Version;
import org.cyclonedx.parsers.JsonParser;
import org.junit.jupiter.api.Test;
import rosinbook.notebook.ContentJson;

/** What the build says that the program is made of, held against what it is made of. */
class SupplyChainTest {
    private static String text(String resource) throws IOException {
        try (InputStream file = SupplyChainTest.class.getResourceAsStream(resource)) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static String sbom() throws IOException {
        return text("/META-INF/sbom/rosinbook.cdx.json");
    }

    /** The class path at run time as Maven's own dependency plugin resolves it: {@code group:name:version}. */
    private static Set<String> classPath() throws IOException {
        return Pattern.compile("^ +([^:\\s]+):([^:]+):jar:([^:]+):(?:compile|runtime)\\b", Pattern.MULTILINE)
                .matcher(text("/runtime-dependencies.txt"))
                .results()
                .map(found -> found.group(1) + ":" + found.group(2) + ":" + found.group(3))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void the_bill_of_materials_lists_exactly_what_is_on_the_class_path_at_run_time() throws IOException {
        Set<String> listed = new TreeSet<>();
        for (JsonNode component : ContentJson.strict().readTree(sbom()).path("components")) {
            String name = component.path("group").asText() + ":"
                    + component.path("name").asText() + ":"
                    + component.path("version").asText();
            assertTrue(listed.add(name), name + " is listed twice");
            assertTrue(component.path("hashes").findValuesAsText("alg").contains("SHA-256"), name);
            assertFalse(component.path("licenses").isEmpty(), name);
        }
        assertEquals(classPath(), listed);
        assertTrue(listed.contains("com.h2database:h2:2.4.240"), listed::toString);
    }

    @Test
    void the_bill_of_materials_is_cyclonedx_as_its_schema_wants_it() throws IOException {
        JsonParser cyclonedx = new JsonParser();
        byte[] sbom = sbom().getBytes(StandardCharsets.UTF_8);
        assertEquals(List.of(), cyclonedx.validate(sbom, Version.VERSION_16));
        String broken = sbom().replace("\"type\" : \"library\"", "\"type\" : \"violin\"");
        assertFalse(cyclonedx
                .validate(broken.getBytes(StandardCharsets.UTF_8), Version.VERSION_16)
                .isEmpty());
    }

    @Test
    void every_library_is_listed_with_a_licence() throws IOException {
        Set<String> listed = Pattern.compile(
                        "^ +(?:\\([^)]+\\) )+.*\\(([^()\\s]+:[^()\\s]+:[^()\\s]+) - .*\\)$", Pattern.MULTILINE)
                .matcher(text("/licences.txt"))
                .results()
                .map(found -> found.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(classPath(), listed);
    }
}
