package rosinbook.notebook;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import rosinbook.limit.Limit;

/**
 * A file kept beside the sheets, named by what it holds.
 *
 * @param sha256 of its bytes, 64 lower-case hex digits
 * @param size in bytes, 1 to {@link #MOST_BYTES}
 */
public record Blob(String sha256, long size) {
    /** The largest file that is kept, in bytes. */
    public static final int MOST_BYTES = Limit.MIDI_BYTES.count();

    public Blob {
        Require.present("sha256", sha256);
        if (!sha256.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException("sha256 is not 64 lower-case hex digits");
        }
        if (size < 1 || size > MOST_BYTES) {
            throw new IllegalArgumentException("size is " + size + "; give 1 to " + MOST_BYTES + " bytes");
        }
    }

    /**
     * The name of these bytes.
     *
     * @throws IllegalArgumentException if there are none, or more than are kept
     */
    public static Blob of(byte[] bytes) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
            return new Blob(HexFormat.of().formatHex(digest), bytes.length);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
