package rosinbook.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * What a backup holds.
 *
 * @param schema version of the tables, such as {@code 004}
 * @param madeAt when it was begun
 * @param damages how many damages the notebook had when it was made
 * @param parts one a table, in the order in which they can be read
 */
public record BackupCover(String schema, Instant madeAt, int damages, List<Part> parts) {
    /** Its name within the file. */
    static final String ENTRY = "rosinbook-backup.json";

    private static final int FORMAT = 1;
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Pattern SCHEMA = Pattern.compile("\\d{1,6}(\\.\\d{1,6})?");
    private static final Pattern TABLE = Pattern.compile("[a-z][a-z0-9_]{0,62}");
    private static final Pattern SHA256 = Pattern.compile("[0-9a-f]{64}");

    public BackupCover {
        require(SCHEMA.matcher(schema).matches() && damages >= 0);
        parts = List.copyOf(parts);
    }

    private static void require(boolean isRight) {
        if (!isRight) {
            throw new BackupUnreadable("this backup is damaged: its cover cannot be read");
        }
    }

    /**
     * One table's rows.
     *
     * @param sha256 of its lines, unpacked
     */
    public record Part(String table, long rows, String sha256) {
        public Part {
            require(TABLE.matcher(table).matches()
                    && rows >= 0
                    && SHA256.matcher(sha256).matches());
        }

        /** Its name within the file. */
        String entry() {
            return "tables/" + table + ".jsonl";
        }
    }

    /** How many rows there are in all. */
    public long rows() {
        return parts.stream().mapToLong(Part::rows).sum();
    }

    byte[] write() {
        ObjectNode json = JSON.createObjectNode()
                .put("format", FORMAT)
                .put("what", "a backup of a Rosinbook")
                .put("schema", schema)
                .put("madeAt", madeAt.toString())
                .put("damages", damages);
        ArrayNode tables = json.putArray("tables");
        for (Part part : parts) {
            tables.addObject().put("table", part.table).put("rows", part.rows).put("sha256", part.sha256);
        }
        try {
            return (JSON.writerWithDefaultPrettyPrinter().writeValueAsString(json) + "\n")
                    .getBytes(StandardCharsets.UTF_8);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException("a cover could not be written", impossible);
        }
    }

    /** @throws BackupUnreadable if it is damaged, or of a later format */
    static BackupCover read(byte[] bytes) {
        try {
            JsonNode json = JSON.readTree(bytes);
            if (json.path("format").asInt() > FORMAT) {
                throw new BackupUnreadable("a newer Rosinbook made this backup; update this one");
            }
            require(json.path("format").asInt() == FORMAT);
            List<Part> parts = new ArrayList<>();
            for (JsonNode part : json.path("tables")) {
                parts.add(new Part(
                        part.path("table").asText(),
                        part.path("rows").asLong(-1),
                        part.path("sha256").asText()));
            }
            return new BackupCover(
                    json.path("schema").asText(),
                    Instant.parse(json.path("madeAt").asText()),
                    json.path("damages").asInt(-1),
                    parts);
        } catch (IOException | DateTimeParseException problem) {
            throw new BackupUnreadable("this backup is damaged: its cover cannot be read");
        }
    }
}
