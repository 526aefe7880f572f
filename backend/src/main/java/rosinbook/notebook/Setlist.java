package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Pieces in order for one date.
 *
 * @param place where; may be empty
 * @param state planned, or played with every item held at the revisions that were used
 * @param rig what the set is played on; absent if undecided
 * @param items by their own ids
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Setlist(
        String title, LocalDate date, String place, State state, Reference rig, Map<String, Item> items, String notes)
        implements Content {
    /** Before or after the evening. */
    public enum State {
        @com.fasterxml.jackson.annotation.JsonProperty("planned")
        PLANNED,
        @com.fasterxml.jackson.annotation.JsonProperty("played")
        PLAYED
    }

    public Setlist {
        title = Require.title("title", title);
        Require.day("date", date);
        place = Require.limited("place", place == null ? "" : place, Require.TITLE_LENGTH);
        state = state == null ? State.PLANNED : state;
        items = Require.keyed("items", items, 200);
        notes = Require.text("notes", notes);
    }

    /** The items' ids in playing order. */
    public List<String> order() {
        return items.entrySet().stream()
                .sorted(Comparator.comparing((Map.Entry<String, Item> item) ->
                                item.getValue().order())
                        .thenComparing(Map.Entry::getKey))
                .map(Map.Entry::getKey)
                .toList();
    }

    @Override
    public Map<String, Link> links() {
        Map<String, Link> links = new LinkedHashMap<>();
        if (rig != null) {
            links.put("/rig", Link.of(Relation.RIG, Kind.RIGS, rig));
        }
        items.forEach((id, item) -> {
            String place = "/items/" + id;
            links.put(place + "/piece", Link.of(Relation.PIECE, Kind.PIECES, item.piece()));
            if (item.recipe() != null) {
                links.put(place + "/recipe", Link.of(Relation.RECIPE, Kind.RECIPES, item.recipe()));
            }
            if (item.rig() != null) {
                links.put(place + "/rig", Link.of(Relation.RIG, Kind.RIGS, item.rig()));
            }
        });
        return links;
    }

    @Override
    public Stream<String> searchWords() {
        return Stream.concat(Stream.of(place, notes), items.values().stream().map(Item::note));
    }

    @Override
    public Optional<LocalDate> day() {
        return Optional.of(date);
    }

    @Override
    public boolean played() {
        return state == State.PLAYED;
    }

    /**
     * One piece of the set.
     *
     * @param order place in the set, smallest first
     * @param recipe the sound; absent if undecided
     * @param rig only where it differs from the set's; filled in when the set is marked as played
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Item(Double order, UUID piece, Reference recipe, Reference rig, String note) {
        public Item {
            order = Require.finite("order", order);
            Require.present("piece", piece);
            note = Require.text("note", note);
        }
    }
}
