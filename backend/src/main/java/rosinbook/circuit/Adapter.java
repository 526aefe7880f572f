package rosinbook.circuit;

import java.util.Map;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/**
 * Everything between the instrument's connector and the synth's.
 *
 * @param routes by route id (1 to 40 characters), at most 80, of which at most 6 are switches; ids are the player's or a proposal's and stay with a route
 *     through its revisions
 * @param parts the resistors it is built from; the usual ones if left out
 */
public record Adapter(Map<String, Route> routes, Parts parts) {
    private static final int MAX_SWITCHES = 6;

    /** @throws IllegalArgumentException starting with {@code routes} */
    public Adapter {
        routes = Require.keyed("routes", routes, 0, 80, 40);
        long switches = routes.values().stream()
                .filter(route -> route.via() instanceof Via.Switch)
                .count();
        if (switches > MAX_SWITCHES) {
            throw new PastLimit(Limit.ENTRIES, "routes has " + switches + " switches; give at most " + MAX_SWITCHES);
        }
        parts = parts == null ? Parts.USUAL : parts;
    }

    /** An adapter of the usual resistors. */
    public static Adapter of(Map<String, Route> routes) {
        return new Adapter(routes, Parts.USUAL);
    }
}
