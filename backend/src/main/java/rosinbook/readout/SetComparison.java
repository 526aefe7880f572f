package rosinbook.readout;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import rosinbook.compare.Moves;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Recipe;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Setlist;

/**
 * One set against another, as a player would tell it.
 *
 * @param rig what changed on each rig, told once
 * @param pieces in the newer set's order, then what was left out
 * @param summary all of it in one line
 */
public record SetComparison(List<RigChanges> rig, List<PieceChanges> pieces, String summary) {
    /** A rig that changed between the sets. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record RigChanges(UUID wasId, UUID nowId, String title, List<ReadableChange> changes) {}

    /** What became of a piece. */
    public enum Fate {
        @JsonProperty("added")
        ADDED,
        @JsonProperty("dropped")
        DROPPED,
        @JsonProperty("kept")
        KEPT
    }

    /** One piece in either set; positions count from 1. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record PieceChanges(
            Fate change,
            boolean moved,
            UUID pieceId,
            String title,
            Integer wasPosition,
            Integer nowPosition,
            String wasRecipe,
            String nowRecipe,
            List<ReadableChange> changes) {
        boolean isUnchanged() {
            return change == Fate.KEPT && !moved && changes.isEmpty();
        }
    }

    /**
     * Compares two sets. Items that name no exact revision are taken at their newest.
     *
     * @param all whether pieces that are the same are told too
     */
    public static SetComparison of(Pages pages, Setlist was, Setlist now, boolean all) {
        return new Comparer(pages, was, now).compare(all);
    }

    private record Entry(Setlist.Item item, int position) {}

    private static final class Comparer {
        private final Pages pages;
        private final Setlist was;
        private final Setlist now;
        private final Map<String, Entry> older;
        private final Map<String, Entry> newer;

        Comparer(Pages pages, Setlist was, Setlist now) {
            this.pages = pages;
            this.was = was;
            this.now = now;
            older = entries(was);
            newer = entries(now);
        }

        /** Items by piece; a piece that is played twice counts as a first and a second one. */
        private static Map<String, Entry> entries(Setlist set) {
            Map<String, Entry> entries = new LinkedHashMap<>();
            Map<UUID, Integer> times = new HashMap<>();
            int position = 0;
            for (String id : set.order()) {
                Setlist.Item item = set.items().get(id);
                int time = times.merge(item.piece(), 1, Integer::sum);
                position++;
                entries.put(item.piece() + "#" + time, new Entry(item, position));
            }
            return entries;
        }

        SetComparison compare(boolean all) {
            fetch();
            Set<String> moved = Moves.between(List.copyOf(older.keySet()), List.copyOf(newer.keySet()));
            List<PieceChanges> pieces = new ArrayList<>();
            newer.forEach((key, entry) -> pieces.add(piece(older.get(key), entry, moved.contains(key))));
            older.forEach((key, entry) -> {
                if (!newer.containsKey(key)) {
                    pieces.add(piece(entry, null, false));
                }
            });
            List<RigChanges> rigs = rigs();
            String summary = SetSummary.of(rigs, pieces);
            return new SetComparison(
                    rigs,
                    all
                            ? pieces
                            : pieces.stream()
                                    .filter(piece -> !piece.isUnchanged())
                                    .toList(),
                    summary);
        }

        /** All that will be looked at, in two goes: what the sets name, and what their recipes build on. */
        private void fetch() {
            Set<Reference> named = new LinkedHashSet<>();
            List<Setlist.Item> items = Stream.concat(older.values().stream(), newer.values().stream())
                    .map(Entry::item)
                    .toList();
            items.forEach(item -> named.add(Reference.newest(item.piece())));
            Stream.concat(
                            items.stream().flatMap(item -> Stream.of(item.recipe(), item.rig())),
                            Stream.of(was.rig(), now.rig()))
                    .filter(Objects::nonNull)
                    .forEach(named::add);
            pages.fetch(named);
            Set<Reference> below = new LinkedHashSet<>();
            Stream.concat(older.values().stream(), newer.values().stream())
                    .flatMap(entry -> recipe(entry).stream())
                    .map(revision -> (Recipe) revision.content())
                    .forEach(recipe -> {
                        Optional.ofNullable(recipe.follows()).ifPresent(below::add);
                        Optional.ofNullable(recipe.synth())
                                .map(Reference::newest)
                                .ifPresent(below::add);
                        Optional.ofNullable(recipe.piece())
                                .map(Reference::newest)
                                .ifPresent(below::add);
                    });
            pages.fetch(below);
        }

        private PieceChanges piece(Entry before, Entry after, boolean moved) {
            Entry shown = after == null ? before : after;
            Optional<Revision> wasRecipe = recipe(before);
            Optional<Revision> nowRecipe = recipe(after);
            boolean kept = before != null && after != null;
            return new PieceChanges(
                    kept ? Fate.KEPT : after == null ? Fate.DROPPED : Fate.ADDED,
                    moved,
                    shown.item().piece(),
                    Titles.in(pages).of(shown.item().piece()).orElse("a piece that is gone"),
                    before == null ? null : before.position(),
                    after == null ? null : after.position(),
                    wasRecipe.map(Comparer::title).orElse(null),
                    nowRecipe.map(Comparer::title).orElse(null),
                    kept ? changes(before, after, wasRecipe, nowRecipe) : List.of());
        }

        private static String title(Revision revision) {
            return revision.content().title();
        }

        private Optional<Revision> recipe(Entry entry) {
            return entry == null || entry.item().recipe() == null
                    ? Optional.empty()
                    : Optional.of(
                            Notebook.find(pages, Kind.RECIPES, entry.item().recipe()));
        }

        private List<ReadableChange> changes(
                Entry before, Entry after, Optional<Revision> wasRecipe, Optional<Revision> nowRecipe) {
            List<ReadableChange> changes = new ArrayList<>();
            String older = wasRecipe.map(Comparer::title).orElse(null);
            String newer = nowRecipe.map(Comparer::title).orElse(null);
            if (!wasRecipe.map(Revision::sheetId).equals(nowRecipe.map(Revision::sheetId))) {
                changes.add(changed("/recipe", "Recipe", older, newer));
            }
            if (wasRecipe.isPresent() && nowRecipe.isPresent()) {
                changes.addAll(settingChanges(wasRecipe.get(), nowRecipe.get()));
            }
            if (!before.item().note().equals(after.item().note())) {
                changes.add(changed(
                        "/note", "Note", before.item().note(), after.item().note()));
            }
            return changes;
        }

        private static ReadableChange changed(String pointer, String where, String was, String now) {
            boolean added = was == null || was.isEmpty();
            boolean removed = now == null || now.isEmpty();
            return new ReadableChange(
                    pointer,
                    List.of(where),
                    added
                            ? ReadableChange.Sort.ADDED
                            : removed ? ReadableChange.Sort.REMOVED : ReadableChange.Sort.CHANGED,
                    added ? null : was,
                    removed ? null : now,
                    null,
                    "");
        }

        private List<ReadableChange> settingChanges(Revision before, Revision after) {
            Phrasing phrasing = RecipeReadout.phrasing(pages, (Recipe) after.content());
            ObjectNode wasSettings = RecipeReadout.of(pages, before).resolved().json();
            ObjectNode nowSettings = RecipeReadout.of(pages, after).resolved().json();
            return new Readout(phrasing).changes(wasSettings, nowSettings);
        }

        private List<RigChanges> rigs() {
            Set<List<Reference>> pairs = new LinkedHashSet<>();
            if (was.rig() != null && now.rig() != null) {
                pairs.add(List.of(was.rig(), now.rig()));
            }
            newer.forEach((key, after) -> {
                Reference nowRig = rig(after.item(), now);
                Reference wasRig = older.containsKey(key) ? rig(older.get(key).item(), was) : null;
                if (wasRig != null && nowRig != null) {
                    pairs.add(List.of(wasRig, nowRig));
                }
            });
            return pairs.stream()
                    .map(pair -> rigChanges(pair.get(0), pair.get(1)))
                    .filter(changes -> !changes.changes().isEmpty())
                    .distinct()
                    .toList();
        }

        private static Reference rig(Setlist.Item item, Setlist set) {
            return item.rig() == null ? set.rig() : item.rig();
        }

        private RigChanges rigChanges(Reference before, Reference after) {
            Revision wasRig = Notebook.find(pages, Kind.RIGS, before);
            Revision nowRig = Notebook.find(pages, Kind.RIGS, after);
            ObjectNode wasContent = settingsOf(wasRig);
            ObjectNode nowContent = settingsOf(nowRig);
            List<ReadableChange> changes =
                    new ArrayList<>(new Readout(Phrasing.plain(Titles.in(pages))).changes(wasContent, nowContent));
            if (!Objects.equals(wasRig.sheetId(), nowRig.sheetId())) {
                changes.add(0, changed("", "Rig", title(wasRig), title(nowRig)));
            }
            return new RigChanges(wasRig.sheetId(), nowRig.sheetId(), title(nowRig), changes);
        }

        /** What a rig sets; its name, day, notes and measurements are no settings. */
        private static ObjectNode settingsOf(Revision rig) {
            return rig.json().deepCopy().without(List.of("title", "date", "notes", "readings", "levels"));
        }
    }
}
