package rosinbook.notebook;

import java.util.Optional;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/** Content that cannot be kept, with the field that is wrong. */
public final class InvalidContent extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    private final String pointer;
    private final Limit limit;

    /**
     * @param pointer JSON Pointer (RFC 6901) of the field; empty for the whole
     * @param message what is wrong and what to do
     */
    public InvalidContent(String pointer, String message) {
        this(pointer, message, null);
    }

    private InvalidContent(String pointer, String message, Limit limit) {
        super(message);
        this.pointer = pointer;
        this.limit = limit;
    }

    /** At {@code pointer}, something passes a limit. */
    public static InvalidContent tooMuch(String pointer, PastLimit problem) {
        return new InvalidContent(pointer, problem.getMessage(), problem.limit());
    }

    /** The limit that is passed, if that is what is wrong. */
    public Optional<Limit> limit() {
        return Optional.ofNullable(limit);
    }

    /** JSON Pointer (RFC 6901) of the field that is wrong; empty for the whole. */
    public String pointer() {
        return pointer;
    }

    /** The same, seen from a document that holds the content at {@code prefix}. */
    InvalidContent below(String prefix) {
        return new InvalidContent(prefix + pointer, getMessage(), limit);
    }
}
