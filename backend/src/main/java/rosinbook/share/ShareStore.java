package rosinbook.share;

import java.time.Instant;
import java.util.List;
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

    /** What a share of exact revisions may show. */
    Set<Reference> shown(UUID shareId);

    /**
     * Counts that it was opened; {@link #list} knows of it, unless something else is being written just then; another process
     * a second later.
     */
    void opened(UUID shareId, Instant when);

    /** Closes it for good; nothing happens if it is closed already. Returns whether there is such a share. */
    boolean revoke(UUID shareId, Instant when);
}
