package rosinbook.level;

import java.io.IOException;

/** A file that cannot be read as a WAV recording. The message says what was found, where, what was expected and the way out. */
public final class UnreadableWav extends IOException {
    private static final long serialVersionUID = 1L;

    private final long offsetBytes;

    UnreadableWav(long offsetBytes, String message) {
        super(message + " (at byte " + offsetBytes + ")");
        this.offsetBytes = offsetBytes;
    }

    /** Where in the file the trouble lies, in bytes from its start. */
    public long offsetBytes() {
        return offsetBytes;
    }
}
