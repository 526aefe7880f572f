package rosinbook.notebook;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/**
 * One immutable saved state of a sheet.
 *
 * @param number 1, 2, 3 … per sheet
 * @param parent the revision it was made from; empty for the first
 * @param json the content
 * @param sha256 of the content's canonical JSON, 64 lower-case hex digits
 * @param savedAt to the microsecond
 * @param savedBy who; may be empty
 * @param reason why; may be empty
 */
public record Revision(
        UUID sheetId,
        Kind kind,
        int number,
        Optional<Integer> parent,
        ObjectNode json,
        String sha256,
        Instant savedAt,
        String savedBy,
        String reason) {
    public Revision {
        Objects.requireNonNull(sheetId, "sheetId");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(json, "json");
        Objects.requireNonNull(sha256, "sha256");
        Objects.requireNonNull(savedAt, "savedAt");
        if (number < 1 || parent.isPresent() && parent.get() >= number) {
            throw new IllegalArgumentException("revision " + number + " cannot follow " + parent);
        }
        savedBy = Require.limited("by", savedBy, 100);
        reason = Require.limited("reason", reason, 1000);
    }

    /** The content as its record. */
    public Content content() {
        return ContentJson.read(kind, json);
    }

    /** This sheet at this revision. */
    public Reference reference() {
        return new Reference(sheetId, number);
    }
}
