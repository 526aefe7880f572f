package rosinbook.share;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import rosinbook.notebook.Reference;

/** Where shares are kept. */
public interface ShareStore {
    /**
     * Keeps a new share.
     *
     * @param shown everything a share of exact revisions may show; empty for one that is kept up to date
     */
    void add(Share share, String tokenSha256, Set<Reference> shown);

    /** Every share ever made, newest first. */
    List<Share> list();

    /** The share with this token; empty if there is none. */
    Optional<Share> byToken(String tokenSha256);

    /** What a share of exact revisions may show. */
    Set<Reference> shown(UUID shareId);

    /** Notes that it was opened. */
    void opened(UUID shareId, Instant when);

    /** Closes it for good; nothing happens if it is closed already. Returns whether there is such a share. */
    boolean revoke(UUID shareId, Instant when);
}
