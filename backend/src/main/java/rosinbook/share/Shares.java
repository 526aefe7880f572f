package rosinbook.share;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Kind;
import rosinbook.notebook.NoSuchSheet;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;

/** A player's shares: making, listing, opening, closing. Safe for use by several threads. */
public final class Shares {
    private final Notebook notebook;
    private final ShareStore store;
    private final Clock clock;
    private final SecureRandom random;

    public Shares(Notebook notebook, ShareStore store, Clock clock, SecureRandom random) {
        this.notebook = notebook;
        this.store = store;
        this.clock = clock;
        this.random = random;
    }

    /** A new share with the token that opens it; the token cannot be shown again. */
    public record Made(Share share, ShareToken token) {}

    /**
     * Shares a rig, a recipe or a setlist.
     *
     * @param revision the exact revision; empty to keep the share up to date
     * @param expiresAt when it stops opening; empty for never
     * @throws NoSuchSheet if there is no such sheet or revision
     * @throws InvalidContent if the expiry is not in the future
     * @throws IllegalArgumentException if the kind cannot be shared, or the name is too long
     */
    public Made make(Kind kind, UUID sheetId, Optional<Integer> revision, String name, Optional<Instant> expiresAt) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        if (expiresAt.isPresent() && !expiresAt.get().isAfter(now)) {
            throw new InvalidContent("/expiresAt", "expiresAt lies in the past; give a later time");
        }
        Share share = new Share(
                UUID.randomUUID(),
                name,
                kind,
                sheetId,
                revision,
                now,
                expiresAt.map(time -> time.truncatedTo(ChronoUnit.MICROS)),
                Optional.empty(),
                Optional.empty(),
                0);
        Reference root = new Reference(sheetId, revision.orElse(null));
        Set<Reference> shown = notebook.look(pages -> {
            Revision found = Notebook.find(pages, kind, root);
            return revision.isPresent() ? Closure.of(pages, found) : Set.of();
        });
        ShareToken token = ShareToken.random(random);
        store.add(share, token.sha256(), shown);
        return new Made(share, token);
    }

    /** Every share ever made, newest first. */
    public List<Share> list() {
        return store.list();
    }

    /** What the shared sheets are called now, by their ids. */
    public Map<UUID, String> titlesOf(Collection<Share> shares) {
        return notebook.look(pages -> {
            pages.fetch(shares.stream()
                    .map(share -> Reference.newest(share.sheetId()))
                    .toList());
            Map<UUID, String> titles = new HashMap<>();
            for (Share share : shares) {
                Revision newest = Notebook.find(pages, share.kind(), Reference.newest(share.sheetId()));
                titles.put(share.sheetId(), newest.content().title());
            }
            return titles;
        });
    }

    /** Whether it still opens. */
    public Share.State state(Share share) {
        return share.state(clock.instant());
    }

    /**
     * Opens a share that a token was found to name; empty if it is closed or has run out.
     *
     * <p>What an exact revision shows never changes, and what is kept up to date only with what it shows; so both are drawn
     * once. Whether the share is open is asked every time.
     *
     * @param form what {@code draw} makes of it, such as "page"
     * @param counts whether somebody gets to see it; who only asks whether it opens is not counted
     */
    public Optional<byte[]> open(Share share, String form, boolean counts, Function<ShareView, byte[]> draw) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        if (share.state(now) != Share.State.OPEN) {
            return Optional.empty();
        }
        if (counts) {
            store.opened(share.id(), now);
        }
        return Optional.of(drawn(share, form, draw));
    }

    private byte[] drawn(Share share, String form, Function<ShareView, byte[]> draw) {
        Object key = List.of("share", share.id(), form);
        return notebook.look(pages -> pages.recall(key)).orElseGet(() -> {
            Set<Reference> shown = share.revision().isPresent() ? store.shown(share.id()) : Set.of();
            return notebook.look(pages -> pages.remember(key, read -> draw.apply(view(read, share, shown))));
        });
    }

    private static ShareView view(Pages pages, Share share, Set<Reference> shown) {
        if (share.revision().isEmpty()) {
            Revision root = Notebook.find(pages, share.kind(), Reference.newest(share.sheetId()));
            SharedPages shared = new SharedPages(pages, Closure.of(pages, root));
            return new ShareReader(shared).view(root, true);
        }
        SharedPages shared = new SharedPages(pages, shown);
        Reference root = new Reference(share.sheetId(), share.revision().get());
        return new ShareReader(shared).view(Notebook.find(shared, share.kind(), root), false);
    }

    /**
     * What a share of this revision would show, to be sent as a file.
     *
     * @throws NoSuchSheet if there is no such sheet or revision
     */
    public ShareView preview(Kind kind, Reference reference) {
        if (!Share.isShareable(kind)) {
            throw new IllegalArgumentException("kind cannot be shared; share a rig, a recipe or a setlist");
        }
        return notebook.look(pages -> {
            Revision root = Notebook.find(pages, kind, reference);
            SharedPages shared = new SharedPages(pages, Closure.of(pages, root));
            return new ShareReader(shared).view(root, false);
        });
    }

    /** Closes a share for good. Returns whether there is such a share. */
    public boolean revoke(UUID shareId) {
        return store.revoke(shareId, clock.instant().truncatedTo(ChronoUnit.MICROS));
    }
}
