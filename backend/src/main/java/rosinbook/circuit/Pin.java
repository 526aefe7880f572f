package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * One contact of a connector.
 *
 * @param role what it carries; {@link PinRole.Unknown} if left out
 * @param x position, -1 at the left edge to 1 at the right edge of the connector; absent when not noted
 * @param y position, -1 at the bottom to 1 at the top; given exactly when {@code x} is
 * @param note the player's own remark, 0 to 300 characters
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Pin(PinRole role, Double x, Double y, String note) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public Pin {
        role = role == null ? new PinRole.Unknown() : role;
        if ((x == null) != (y == null)) {
            String missing = x == null ? "x" : "y";
            throw new IllegalArgumentException(missing + " is missing; give both x and y, or neither");
        }
        if (x != null) {
            Require.within("x", x, -1, 1, "a place");
            Require.within("y", y, -1, 1, "a place");
        }
        note = Require.line("note", note, 0, 300);
    }

    /** A pin without position or note. */
    public static Pin of(PinRole role) {
        return new Pin(role, null, null, "");
    }
}
