package rosinbook.level;

/** A recording that was read but from which no levels can be told. The message says what was found and what to record instead. */
public final class UnusableRecording extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnusableRecording(String message) {
        super(message);
    }
}
