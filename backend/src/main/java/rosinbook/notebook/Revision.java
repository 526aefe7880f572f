package rosinbook.notebook;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/** One immutable saved state of a sheet; its content is read from its JSON once. Its JSON must not be changed. */
public final class Revision {
    private final UUID sheetId;
    private final Kind kind;
    private final int number;
    private final Optional<Integer> parent;
    private final ObjectNode json;
    private final String sha256;
    private final Instant savedAt;
    private final String savedBy;
    private final String reason;
    private volatile Content content;

    /**
     * @param number 1, 2, 3 … per sheet
     * @param parent the revision it was made from; empty for the first
     * @param json the content
     * @param sha256 of the content's canonical JSON, 64 lower-case hex digits
     * @param savedAt to the microsecond
     * @param savedBy who; may be empty
     * @param reason why; may be empty
     */
    public Revision(
            UUID sheetId,
            Kind kind,
            int number,
            Optional<Integer> parent,
            ObjectNode json,
            String sha256,
            Instant savedAt,
            String savedBy,
            String reason) {
        this.sheetId = Objects.requireNonNull(sheetId, "sheetId");
        this.kind = Objects.requireNonNull(kind, "kind");
        this.json = Objects.requireNonNull(json, "json");
        this.sha256 = Objects.requireNonNull(sha256, "sha256");
        this.savedAt = Objects.requireNonNull(savedAt, "savedAt");
        if (number < 1 || parent.isPresent() && parent.get() >= number) {
            throw new IllegalArgumentException("revision " + number + " cannot follow " + parent);
        }
        this.number = number;
        this.parent = parent;
        this.savedBy = Require.limited("by", savedBy, 100);
        this.reason = Require.limited("reason", reason, 1000);
    }

    public UUID sheetId() {
        return sheetId;
    }

    public Kind kind() {
        return kind;
    }

    public int number() {
        return number;
    }

    public Optional<Integer> parent() {
        return parent;
    }

    public ObjectNode json() {
        return json;
    }

    public String sha256() {
        return sha256;
    }

    public Instant savedAt() {
        return savedAt;
    }

    public String savedBy() {
        return savedBy;
    }

    public String reason() {
        return reason;
    }

    /**
     * The content as its record.
     *
     * @throws UnreadableRevision if it is none that could have been saved
     */
    public Content content() {
        Content read = content;
        if (read == null) {
            try {
                read = ContentJson.read(kind, json);
            } catch (InvalidContent damaged) {
                throw new UnreadableRevision(sheetId, number, damaged);
            }
            content = read;
        }
        return read;
    }

    /** This sheet at this revision. */
    public Reference reference() {
        return new Reference(sheetId, number);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Revision that
                && sheetId.equals(that.sheetId)
                && kind == that.kind
                && number == that.number
                && parent.equals(that.parent)
                && sha256.equals(that.sha256)
                && json.equals(that.json)
                && savedAt.equals(that.savedAt)
                && savedBy.equals(that.savedBy)
                && reason.equals(that.reason);
    }

    @Override
    public int hashCode() {
        return Objects.hash(sheetId, number);
    }

    /** {@code recipes 3f…@7}. */
    @Override
    public String toString() {
        return kind.path() + " " + reference();
    }
}
