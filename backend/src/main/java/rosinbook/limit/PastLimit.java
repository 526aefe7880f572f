package rosinbook.limit;

import java.io.Serial;

/** Something is larger, deeper, longer or more than is let in. */
public final class PastLimit extends IllegalArgumentException {
    @Serial
    private static final long serialVersionUID = 1;

    private final Limit limit;

    /** @param message what is too much, how much is let in, and what to do; begins with a field's name if it is about one */
    public PastLimit(Limit limit, String message) {
        super(message);
        this.limit = limit;
    }

    /** Says the limit, and its remedy. */
    public PastLimit(Limit limit) {
        this(limit, limit.sentence());
    }

    public Limit limit() {
        return limit;
    }
}
