package rosinbook.circuit;

import java.util.Map;

/**
 * A plug or socket with its contacts.
 *
 * @param shape what it looks like, in the player's words, such as {@code round 8-pin}; 0 to 80 characters
 * @param name what the player calls it, such as {@code socket on the violin}; 0 to 80 characters
 * @param pins contacts by the label printed beside them, 1 to 40; labels have 1 to 12 characters; kept sorted, whole
 *     numbers by size and before words
 * @param drawnFrom the side from which the pins' positions were noted; {@link Side#MATING} if left out
 */
public record Connector(String shape, String name, Map<String, Pin> pins, Side drawnFrom) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public Connector {
        shape = Require.line("shape", shape, 0, 80);
        name = Require.line("name", name, 0, 80);
        pins = Require.keyed("pins", pins, 1, 40, 12);
        drawnFrom = drawnFrom == null ? Side.MATING : drawnFrom;
    }

    /** A connector whose positions, if any, were noted from the mating side. */
    public static Connector of(String shape, String name, Map<String, Pin> pins) {
        return new Connector(shape, name, pins, Side.MATING);
    }
}
