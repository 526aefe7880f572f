package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.UUID;

/**
 * A sheet named by another.
 *
 * @param id the sheet
 * @param revision the exact revision, from 1; absent for the newest
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Reference(UUID id, Integer revision) {
    public Reference {
        Require.present("id", id);
        if (revision != null && revision < 1) {
            throw new IllegalArgumentException("revision is " + revision + "; revisions count from 1");
        }
    }

    /** Whatever revision is newest when it is read. */
    public static Reference newest(UUID id) {
        return new Reference(id, null);
    }

    /** {@code id@revision}, or just the id for the newest. */
    @Override
    public String toString() {
        return revision == null ? id.toString() : id + "@" + revision;
    }
}
