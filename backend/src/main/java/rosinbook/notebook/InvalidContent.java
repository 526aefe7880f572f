package rosinbook.notebook;

/** Content that cannot be kept, with the field that is wrong. */
public final class InvalidContent extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    private final String pointer;

    /**
     * @param pointer JSON Pointer (RFC 6901) of the field; empty for the whole
     * @param message what is wrong and what to do
     */
    public InvalidContent(String pointer, String message) {
        super(message);
        this.pointer = pointer;
    }

    public String pointer() {
        return pointer;
    }

    /** The same, seen from a document that holds the content at {@code prefix}. */
    InvalidContent below(String prefix) {
        return new InvalidContent(prefix + pointer, getMessage());
    }
}
