package rosinbook.take.smf;

/** A file that is not a readable Standard MIDI File; says at which byte, what stood there and what was expected. */
public final class MidiFormatException extends RuntimeException {
    private final int byteOffset;

    /**
     * @param byteOffset where in the file, 0 = first byte
     * @param problem what was found and what was expected, without the offset
     */
    public MidiFormatException(int byteOffset, String problem) {
        super("byte " + byteOffset + ": " + problem);
        this.byteOffset = byteOffset;
    }

    /** Where in the file, 0 = first byte. */
    public int byteOffset() {
        return byteOffset;
    }
}
