package rosinbook.notebook;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Stream;
import rosinbook.compare.Comparison;
import rosinbook.compare.ThreeWayMerge;

/**
 * A player's notebook: the rules of keeping.
 *
 * <p>Safe for use by several threads; every method is one transaction.
 */
public final class Notebook {
    private final SheetStore store;
    private final Clock clock;

    public Notebook(SheetStore store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    /** Reads, from one consistent state. */
    public <T> T look(Function<Pages, T> work) {
        return store.look(work);
    }

    /**
     * The newest revision.
     *
     * @throws NoSuchSheet if there is no such sheet of that kind
     */
    public Revision newest(Kind kind, UUID id) {
        return store.look(pages -> ofKind(kind, id, pages.newest(id)));
    }

    /**
     * An exact revision.
     *
     * @throws NoSuchSheet if there is no such sheet of that kind or no such revision
     */
    public Revision revision(Kind kind, UUID id, int number) {
        return store.look(pages -> exact(pages, kind, id, number));
    }

    /** An exact revision, or the newest where the reference leaves it open. */
    public static Revision find(Pages pages, Kind kind, Reference reference) {
        return reference.revision() == null
                ? ofKind(kind, reference.id(), pages.newest(reference.id()))
                : exact(pages, kind, reference.id(), reference.revision());
    }

    private static Revision exact(Pages pages, Kind kind, UUID id, int number) {
        Optional<Revision> found = pages.revision(id, number);
        if (found.isEmpty()) {
            ofKind(kind, id, pages.newest(id));
            throw new NoSuchRevision("this " + kind.singular() + " has no revision " + number);
        }
        return ofKind(kind, id, found);
    }

    /** What a save builds on. */
    private static Revision base(Pages pages, Revision newest, int basedOn) {
        return pages.revision(newest.sheetId(), basedOn).orElseThrow(() -> new NoSuchBase(newest, basedOn));
    }

    private static Revision ofKind(Kind kind, UUID id, Optional<Revision> found) {
        return found.filter(revision -> revision.kind() == kind)
                .orElseThrow(() -> new NoSuchSheet("there is no " + kind.singular() + " " + id));
    }

    /**
     * Keeps a file, so that a sheet may name it. When this returns, it is on the disk.
     *
     * @throws IllegalArgumentException if it is empty or too large
     */
    public Blob keep(byte[] bytes) {
        Blob blob = Blob.of(bytes);
        store.change(pages -> {
            pages.keep(blob, bytes);
            return blob;
        });
        return blob;
    }

    /**
     * A new sheet. Sending the same id and content again, as after a lost answer, changes nothing.
     *
     * @param id made by the caller, who may repeat the call
     * @param log for a rig: what happened, written down with it
     * @throws InvalidContent naming the field that is wrong, also if the id already belongs to something else
     */
    public Saved create(Kind kind, UUID id, JsonNode json, Note note, Optional<JsonNode> log) {
        Content content = ContentJson.read(kind, json);
        return store.change(pages -> {
            if (pages.newest(id).isPresent()) {
                return withLog(pages, repeated(pages, kind, id, content), log, note);
            }
            Content pinned = Pinning.pinned(pages, content);
            check(pages, pinned);
            Revision first = revision(kind, id, 1, Optional.empty(), pinned, note);
            pages.append(first, pinned);
            return withLog(pages, Saved.plain(first), log, note);
        });
    }

    private Saved repeated(Pages pages, Kind kind, UUID id, Content content) {
        Revision first = pages.revision(id, 1).orElseThrow();
        boolean same = first.kind() == kind
                && Stream.of(Pinning.pinnedAs(content, first.content()), Pinning.pinned(pages, content))
                        .anyMatch(held -> first.json().equals(ContentJson.tree(held)));
        if (!same) {
            throw new InvalidContent("/id", "this id already belongs to another sheet; make a new one");
        }
        return Saved.plain(first);
    }

    /**
     * Saves a new state over revision {@code basedOn}. If somebody saved in between and the edits do not touch, both are
     * kept. A save that changes nothing adds no revision.
     *
     * @param log for a rig: what happened, written down with it
     * @param stayPinned for a starting point: recipes that keep to the revision they follow now; all others follow on
     * @throws EditedMeanwhile if the edits touch; nothing was changed
     * @throws InvalidContent naming the field that is wrong
     * @throws NoSuchBase if there is no revision {@code basedOn}
     * @throws NoSuchSheet if there is no such sheet
     */
    public Saved save(
            Kind kind, UUID id, int basedOn, JsonNode json, Note note, Optional<JsonNode> log, Set<UUID> stayPinned) {
        Content given = ContentJson.read(kind, json);
        return store.change(pages -> {
            Revision newest = ofKind(kind, id, pages.newestForSaving(id));
            Revision base = base(pages, newest, basedOn);
            Content content = Pinning.pinned(pages, given);
            ThreeWayMerge merge = ThreeWayMerge.of(base.json(), newest.json(), ContentJson.tree(content));
            if (!merge.isClean()) {
                throw new EditedMeanwhile(newest, merge);
            }
            Content merged = Pinning.pinned(pages, readMerged(kind, newest, merge));
            check(pages, merged);
            Saved saved = append(pages, newest, merged, note);
            Comparison theirs =
                    Comparison.of(ContentJson.tree(content), saved.revision().json());
            if (!theirs.isEmpty()) {
                saved = new Saved(saved.revision(), Optional.of(theirs), Optional.empty(), List.of());
            }
            return withLog(pages, followOn(pages, newest, saved, stayPinned, note.by()), log, note);
        });
    }

    /** Two edits that do not touch can still make no valid whole together; then the player chooses, as for any conflict. */
    private static Content readMerged(Kind kind, Revision newest, ThreeWayMerge merge) {
        try {
            return ContentJson.read(kind, merge.merged());
        } catch (InvalidContent problem) {
            if (merge.merged().equals(newest.json())) {
                throw problem;
            }
            throw new EditedMeanwhile(newest, merge);
        }
    }

    /**
     * Brings an earlier state back, as a new revision.
     *
     * @throws EditedMeanwhile if {@code basedOn} is no longer the newest
     * @throws NoSuchBase if there is no revision {@code basedOn}
     */
    public Saved restore(Kind kind, UUID id, int number, int basedOn, Note note) {
        return store.change(pages -> {
            Revision newest = ofKind(kind, id, pages.newestForSaving(id));
            Revision earlier = exact(pages, kind, id, number);
            if (newest.number() != basedOn) {
                throw new EditedMeanwhile(
                        newest, ThreeWayMerge.of(base(pages, newest, basedOn).json(), newest.json(), earlier.json()));
            }
            Content content = earlier.content();
            check(pages, content);
            Note why = note.reason().isEmpty() ? new Note(note.by(), "Back to revision " + number) : note;
            Saved saved = append(pages, newest, content, why);
            return followOn(pages, newest, saved, Set.of(), note.by());
        });
    }

    /**
     * Marks a set as played: every item is held at the recipe and rig revisions that are newest now.
     *
     * @throws EditedMeanwhile if {@code basedOn} is no longer the newest
     * @throws NoSuchBase if there is no revision {@code basedOn}
     */
    public Saved markPlayed(UUID id, int basedOn, Note note) {
        return store.change(pages -> {
            Revision newest = ofKind(Kind.SETLISTS, id, pages.newestForSaving(id));
            if (newest.number() != basedOn) {
                Revision base = base(pages, newest, basedOn);
                throw new EditedMeanwhile(newest, ThreeWayMerge.of(base.json(), newest.json(), base.json()));
            }
            Setlist set = (Setlist) newest.content();
            Note why = note.reason().isEmpty() ? new Note(note.by(), "Played") : note;
            return append(pages, newest, PlayedSet.of(pages, set), why);
        });
    }

    private Saved append(Pages pages, Revision newest, Content content, Note note) {
        if (newest.json().equals(ContentJson.tree(content))) {
            return Saved.plain(newest);
        }
        Revision next = revision(
                newest.kind(), newest.sheetId(), newest.number() + 1, Optional.of(newest.number()), content, note);
        pages.append(next, content);
        return Saved.plain(next);
    }

    private Saved followOn(Pages pages, Revision before, Saved saved, Set<UUID> stayPinned, String by) {
        Revision now = saved.revision();
        if (before.kind() != Kind.RECIPES || now.number() == before.number()) {
            return saved;
        }
        List<UUID> followedOn = new ArrayList<>();
        for (Pages.Use use : pages.usedBy(now.sheetId())) {
            if (use.relation() != Content.Relation.FOLLOWS || stayPinned.contains(use.id())) {
                continue;
            }
            if (!((Recipe) now.content()).isStartingPoint()) {
                throw Recipes.stillFollowed();
            }
            Revision follower = pages.newestForSaving(use.id()).orElseThrow();
            if (!follows(follower, now)) {
                continue; // moved away by a save that was answered meanwhile
            }
            Recipe recipe = ((Recipe) follower.content()).following(now.reference());
            try {
                Recipes.over(now, follower, recipe);
            } catch (InvalidContent problem) {
                throw new InvalidContent(
                        problem.pointer(),
                        "\"" + recipe.title() + "\" could not follow: " + problem.getMessage()
                                + ". Leave it pinned, or change it first");
            }
            append(
                    pages,
                    follower,
                    recipe,
                    new Note(by, "Follows \"" + title(now) + "\" on to revision " + now.number()));
            followedOn.add(use.id());
        }
        return saved.withFollowedOn(followedOn);
    }

    private static boolean follows(Revision follower, Revision start) {
        Reference followed = ((Recipe) follower.content()).follows();
        return followed != null && followed.id().equals(start.sheetId());
    }

    private static String title(Revision revision) {
        return revision.content().title();
    }

    private Saved withLog(Pages pages, Saved saved, Optional<JsonNode> log, Note note) {
        if (log.isEmpty()) {
            return saved;
        }
        Content entry = logAbout(pages, saved.revision(), log.get());
        UUID id = logId(saved.revision(), entry);
        if (pages.newest(id).isEmpty()) {
            pages.append(revision(Kind.LOG, id, 1, Optional.empty(), entry, note), entry);
        }
        return saved.withLogEntry(id);
    }

    private static Content logAbout(Pages pages, Revision about, JsonNode log) {
        if (!log.isObject()) {
            throw new InvalidContent("/log", "an object is needed here");
        }
        if (log.hasNonNull("about") && !log.path("about").isObject()) {
            throw new InvalidContent("/log/about", "an object is needed here");
        }
        ObjectNode withSubject = log.deepCopy();
        ObjectNode subject = ContentJson.strict()
                .createObjectNode()
                .put("kind", about.kind().path())
                .set("reference", ContentJson.tree(about.reference()));
        withSubject.withObject("/about").set(about.kind().path(), subject);
        try {
            Content entry = ContentJson.read(Kind.LOG, withSubject);
            check(pages, entry);
            return entry;
        } catch (InvalidContent problem) {
            throw problem.below("/log");
        }
    }

    /** The same for the same words about the same revision, so that a save sent twice is written down once. */
    private static UUID logId(Revision about, Content entry) {
        String whole = about.reference() + " " + ContentJson.canonical(ContentJson.tree(entry));
        return UUID.nameUUIDFromBytes(whole.getBytes(StandardCharsets.UTF_8));
    }

    private Revision revision(Kind kind, UUID id, int number, Optional<Integer> parent, Content content, Note note) {
        ObjectNode json = ContentJson.tree(content);
        String sha256 = ContentJson.sha256(ContentJson.canonical(json));
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        return new Revision(id, kind, number, parent, json, sha256, now, note.by(), note.reason());
    }

    private static void check(Pages pages, Content content) {
        for (Map.Entry<String, Content.Link> entry : content.links().entrySet()) {
            Content.Link link = entry.getValue();
            Optional<Revision> target = link.to().revision() == null
                    ? pages.newest(link.to().id())
                    : pages.revision(link.to().id(), link.to().revision());
            if (target.isEmpty() || target.get().kind() != link.kind()) {
                throw new InvalidContent(
                        entry.getKey(), "there is no such " + link.kind().singular() + " in this notebook");
            }
        }
        for (Blob blob : content.blobs()) {
            if (!pages.holds(blob)) {
                throw new InvalidContent(
                        "/midi", "there is no such file in this notebook; send it to /api/blobs first, then save");
            }
        }
        if (content instanceof Recipe recipe && recipe.follows() != null) {
            Revision start = Recipes.startingPoint(pages, recipe.follows());
            Recipes.over(start, start, recipe);
        }
    }

    /**
     * Who saves, and why.
     *
     * @param by up to 100 characters, may be empty
     * @param reason up to 1000 characters, may be empty
     */
    public record Note(String by, String reason) {
        public Note {
            by = Require.limited("by", by == null ? "" : by, 100);
            reason = Require.limited("reason", reason == null ? "" : reason, 1000);
        }
    }
}
