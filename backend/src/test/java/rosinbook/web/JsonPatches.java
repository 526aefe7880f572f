package rosinbook.web;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.json.Json;
import jakarta.json.JsonReader;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import rosinbook.notebook.ContentJson;

/** RFC 6902 by Eclipse Parsson. */
final class JsonPatches {
    private JsonPatches() {}

    static JsonNode applied(String patch, JsonNode older) {
        try (JsonReader operations = Json.createReader(new StringReader(patch));
                JsonReader target = Json.createReader(new StringReader(older.toString()))) {
            String newer = Json.createPatch(operations.readArray())
                    .apply(target.readObject())
                    .toString();
            return ContentJson.parse(newer.getBytes(StandardCharsets.UTF_8));
        }
    }
}
