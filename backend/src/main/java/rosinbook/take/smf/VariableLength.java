package rosinbook.take.smf;

import java.io.ByteArrayOutputStream;

/** Numbers of one to four bytes, seven bits each. Source: Standard MIDI Files 1.0, "Variable-Length Quantities". */
public final class VariableLength {
    /** The greatest number the format can hold. */
    public static final int MAX = 0x0FFFFFFF;

    private VariableLength() {}

    /**
     * Writes a number.
     *
     * @throws IllegalArgumentException if it is outside 0 to {@link #MAX}
     */
    public static void write(ByteArrayOutputStream out, long number) {
        if (number < 0 || number > MAX) {
            throw new IllegalArgumentException("a time or length of " + number + " does not fit; the limit is " + MAX);
        }
        for (int shift = 21; shift > 0; shift -= 7) {
            if (number >> shift != 0) {
                out.write((int) (number >> shift & 0x7F | 0x80));
            }
        }
        out.write((int) (number & 0x7F));
    }
}
