package rosinbook.notebook;

import java.util.UUID;

/** A revision is kept, but cannot be read: it is damaged, and whoever asks for it is not to blame. */
public final class UnreadableRevision extends IllegalStateException {
    private static final long serialVersionUID = 1;

    /** @param cause what is wrong with it */
    public UnreadableRevision(UUID sheetId, int number, RuntimeException cause) {
        super(
                "revision " + number + " of sheet " + sheetId
                        + " is damaged and cannot be read; stop the service, then \"rosinbook verify\" lists every damage",
                cause);
    }
}
