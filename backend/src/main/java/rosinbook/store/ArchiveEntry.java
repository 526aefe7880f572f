package rosinbook.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Revision;

/** One revision as a file of an archive. */
final class ArchiveEntry {
    /** {@code sheets/rigs/3f…/r0012.json}. */
    static final Pattern NAME = Pattern.compile("sheets/[a-z]+/[0-9a-f-]{36}/r[0-9]{4,9}\\.json");

    /**
     * Folder by folder, and in each the revisions by their numbers: these are padded to four digits, so a longer name has
     * the higher number.
     */
    static final Comparator<String> ORDER = Comparator.comparing(ArchiveEntry::folder)
            .thenComparing(String::length)
            .thenComparing(Comparator.naturalOrder());

    static final int FORMAT = 1;

    private static final Instant EARLIEST = Instant.parse("0001-01-01T00:00:00Z");
    private static final Instant LATEST = Instant.parse("9999-12-31T00:00:00Z");

    private ArchiveEntry() {}

    private static String folder(String name) {
        return name.substring(0, name.lastIndexOf('/') + 1);
    }

    static boolean isName(String name) {
        return NAME.matcher(name).matches();
    }

    static String name(Revision revision) {
        return name(revision.kind(), revision.sheetId(), revision.number());
    }

    static String name(Kind kind, UUID id, int number) {
        return "sheets/%s/%s/r%04d.json".formatted(kind.path(), id, number);
    }

    static byte[] write(Revision revision) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.put("format", FORMAT);
        json.put("id", revision.sheetId().toString());
        json.put("kind", revision.kind().path());
        json.put("revision", revision.number());
        revision.parent().ifPresent(parent -> json.put("parent", parent));
        json.put("savedAt", revision.savedAt().toString());
        json.put("savedBy", revision.savedBy());
        json.put("reason", revision.reason());
        json.put("sha256", revision.sha256());
        json.set("content", revision.json());
        try {
            return ContentJson.strict().writerWithDefaultPrettyPrinter().writeValueAsBytes(json);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException("a revision could not be written", impossible);
        }
    }

    /** @throws ArchiveUnreadable if it is not what {@link #write} wrote, or its content too long to be kept; naming the file */
    static Revision read(String name, byte[] bytes) {
        try {
            Revision revision = revision(ContentJson.parse(bytes, Archive.MAX_ENTRY_BYTES));
            if (!name(revision).equals(name)) {
                throw new ArchiveUnreadable(name + " holds something else than its name says");
            }
            String content = ContentJson.canonical(revision.json());
            if (!ContentJson.sha256(content).equals(revision.sha256())) {
                throw new ArchiveUnreadable(name + " is damaged: its content does not match its checksum");
            }
            int length = content.getBytes(StandardCharsets.UTF_8).length;
            if (length > ContentJson.MAX_BYTES) {
                throw new ArchiveUnreadable(name + " cannot be kept: its content is " + length + " bytes long, and "
                        + ContentJson.MAX_BYTES + " are the most");
            }
            ContentJson.read(revision.kind(), revision.json());
            return revision;
        } catch (InvalidContent problem) {
            throw new ArchiveUnreadable(name + " cannot be kept: " + problem.pointer() + " " + problem.getMessage());
        } catch (IllegalArgumentException | DateTimeException problem) {
            throw new ArchiveUnreadable(name + " is not a revision of a Rosinbook archive");
        }
    }

    /** Within what either database keeps as it is. */
    private static Instant savedAt(String text) {
        Instant savedAt = Instant.parse(text);
        boolean isToTheMicrosecond = savedAt.truncatedTo(ChronoUnit.MICROS).equals(savedAt);
        if (savedAt.isBefore(EARLIEST) || savedAt.isAfter(LATEST) || !isToTheMicrosecond) {
            throw new IllegalArgumentException("savedAt");
        }
        return savedAt;
    }

    private static Revision revision(JsonNode json) {
        if (json.path("format").asInt() != FORMAT) {
            throw new IllegalArgumentException("format");
        }
        if (!(json.path("content") instanceof ObjectNode content)) {
            throw new IllegalArgumentException("content");
        }
        return new Revision(
                UUID.fromString(json.path("id").asText()),
                Kind.ofPath(json.path("kind").asText()).orElseThrow(() -> new IllegalArgumentException("kind")),
                json.path("revision").asInt(),
                json.has("parent") ? Optional.of(json.path("parent").asInt()) : Optional.empty(),
                content,
                json.path("sha256").asText(),
                savedAt(json.path("savedAt").asText()),
                json.path("savedBy").asText(),
                json.path("reason").asText());
    }
}
