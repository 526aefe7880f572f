package rosinbook.store;

import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import rosinbook.notebook.Revision;

/**
 * What readers of a database need not ask it for again.
 *
 * <p>Revisions, because a row that was once committed never changes; and what was made of revisions, together with the
 * newest numbers it was made from, so that whoever recalls it can see whether it still holds. Several processes on one
 * database need not tell each other anything. Only readers of committed states may add to it.
 */
final class Memory {
    /** Letters of content; in memory about ten bytes each. */
    private static final long CONTENT_LETTERS = 6_000_000;

    private static final long MADE_BYTES = 16 << 20;

    /** What an entry weighs besides its content. */
    private static final int OVERHEAD = 500;

    private final RecentlyUsed<RevisionKey, Kept> revisions =
            new RecentlyUsed<>(CONTENT_LETTERS, kept -> kept.letters() + OVERHEAD);
    private final RecentlyUsed<MadeKey, Made> made =
            new RecentlyUsed<>(MADE_BYTES, entry -> entry.bytes().length + OVERHEAD);

    private record RevisionKey(UUID notebookId, UUID sheetId, int number) {}

    private record Kept(Revision revision, int letters) {}

    private record MadeKey(UUID notebookId, Object key) {}

    /**
     * Something made of revisions.
     *
     * @param heads the newest number of every sheet that was asked for its newest revision; 0 for one that was not there
     */
    record Made(byte[] bytes, Map<UUID, Integer> heads) {
        Made {
            heads = Map.copyOf(heads);
        }
    }

    Optional<Revision> revision(UUID notebookId, UUID sheetId, int number) {
        return revisions.get(new RevisionKey(notebookId, sheetId, number)).map(Kept::revision);
    }

    /** @param letters of its canonical JSON */
    void keep(UUID notebookId, Revision revision, int letters) {
        revisions.put(new RevisionKey(notebookId, revision.sheetId(), revision.number()), new Kept(revision, letters));
    }

    Optional<Made> made(UUID notebookId, Object key) {
        return made.get(new MadeKey(notebookId, key));
    }

    void keep(UUID notebookId, Object key, Made entry) {
        made.put(new MadeKey(notebookId, key), entry);
    }
}
