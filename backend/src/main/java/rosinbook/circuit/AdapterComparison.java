package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** What differs between two adapters, route by route. */
public final class AdapterComparison {
    private AdapterComparison() {}

    /** What happened to a route. */
    public enum Kind {
        /** It is new. */
        @JsonProperty("added")
        ADDED,
        /** It is gone. */
        @JsonProperty("removed")
        REMOVED,
        /** It leads elsewhere or through something else. */
        @JsonProperty("changed")
        CHANGED
    }

    /**
     * One difference.
     *
     * @param route id
     * @param kind what happened
     * @param was the route in words; empty for an added one
     * @param now the route in words; empty for a removed one
     */
    public record Change(String route, Kind kind, String was, String now) {}

    /** The differences in the order of route ids; empty for equal routes. */
    public static List<Change> of(Adapter was, Adapter now) {
        List<Change> changes = new ArrayList<>();
        var ids = new TreeSet<>(was.routes().keySet());
        ids.addAll(now.routes().keySet());
        for (String id : ids) {
            Route before = was.routes().get(id);
            Route after = now.routes().get(id);
            if (before == null) {
                changes.add(new Change(id, Kind.ADDED, "", after.describe()));
            } else if (after == null) {
                changes.add(new Change(id, Kind.REMOVED, before.describe(), ""));
            } else if (!before.equals(after)) {
                changes.add(new Change(id, Kind.CHANGED, before.describe(), after.describe()));
            }
        }
        return List.copyOf(changes);
    }
}
