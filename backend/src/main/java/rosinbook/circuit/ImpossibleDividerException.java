package rosinbook.circuit;

import java.util.Optional;

/** No pair of resistors can reach a goal within its limits; says why and what the nearest pair gives. */
public final class ImpossibleDividerException extends Exception {
    private static final long serialVersionUID = 1;
    private final transient DividerChoice nearest;

    ImpossibleDividerException(String why, DividerChoice nearest) {
        super(why);
        this.nearest = nearest;
    }

    /** The pair within the limits that comes closest to the target; empty when no pair keeps the limits. */
    public Optional<DividerChoice> nearest() {
        return Optional.ofNullable(nearest);
    }
}
