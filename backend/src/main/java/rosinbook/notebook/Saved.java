package rosinbook.notebook;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rosinbook.compare.Comparison;

/**
 * What came of a save.
 *
 * @param revision what is newest now
 * @param mergedWith what somebody else had changed in between and was kept too; empty if nobody had
 * @param logEntry the log entry written with it, if one was
 * @param followedOn recipes that follow the saved starting point and went on with it
 */
public record Saved(
        Revision revision, Optional<Comparison> mergedWith, Optional<UUID> logEntry, List<UUID> followedOn) {
    static Saved plain(Revision revision) {
        return new Saved(revision, Optional.empty(), Optional.empty(), List.of());
    }

    Saved withLogEntry(UUID id) {
        return new Saved(revision, mergedWith, Optional.of(id), followedOn);
    }

    Saved withFollowedOn(List<UUID> ids) {
        return new Saved(revision, mergedWith, logEntry, List.copyOf(ids));
    }
}
