package rosinbook.level;

/** How one sample lies in a WAV file. All are little-endian; integers are two's complement, left-justified in their container. */
public enum SampleFormat {
    INT16(2, 16),
    INT24(3, 24),
    INT32(4, 32),
    FLOAT32(4, 24);

    private final int bytes;
    private final int significantBits;

    SampleFormat(int bytes, int significantBits) {
        this.bytes = bytes;
        this.significantBits = significantBits;
    }

    /** Bytes one sample takes in the file. */
    public int bytes() {
        return bytes;
    }

    /**
     * The rms of rounding to this format in dBFS, (1/√12) of the smallest step: −101.1 for 16 bit. No level below it means
     * anything. A float is taken as 24 bit, the precision of its mantissa.
     *
     * @see "Oppenheim, Schafer: Discrete-Time Signal Processing, ch. 4, quantisation noise"
     */
    public double floorDbfs() {
        return Decibels.ofAmplitude(Math.scalb(1.0, 1 - significantBits) / Math.sqrt(12));
    }

    /** The smallest amplitude that counts as full scale: the largest positive code; for a float 1. */
    float fullScale() {
        return switch (this) {
            case INT16 -> 32767f / 32768f;
            case INT24 -> 8388607f / 8388608f;
            case INT32, FLOAT32 -> 1f;
        };
    }

    /**
     * Turns interleaved bytes into amplitudes, ±1 at full scale.
     *
     * @param into {@code float[channel][frame]}, filled from {@code firstFrame} on
     */
    void decode(byte[] interleaved, int frames, float[][] into, int firstFrame) {
        int stride = bytes * into.length;
        for (int channel = 0; channel < into.length; channel++) {
            decodeChannel(interleaved, channel * bytes, stride, frames, into[channel], firstFrame);
        }
    }

    private void decodeChannel(byte[] data, int start, int stride, int frames, float[] into, int firstFrame) {
        int at = start;
        int end = firstFrame + frames;
        switch (this) {
            case INT16 -> {
                for (int frame = firstFrame; frame < end; frame++, at += stride) {
                    into[frame] = (data[at] & 0xFF | data[at + 1] << 8) * 0x1p-15f;
                }
            }
            case INT24 -> {
                for (int frame = firstFrame; frame < end; frame++, at += stride) {
                    into[frame] = (data[at] & 0xFF | (data[at + 1] & 0xFF) << 8 | data[at + 2] << 16) * 0x1p-23f;
                }
            }
            case INT32 -> {
                for (int frame = firstFrame; frame < end; frame++, at += stride) {
                    into[frame] = word(data, at) * 0x1p-31f;
                }
            }
            case FLOAT32 -> {
                for (int frame = firstFrame; frame < end; frame++, at += stride) {
                    into[frame] = Float.intBitsToFloat(word(data, at));
                }
            }
        }
    }

    private static int word(byte[] data, int at) {
        return data[at] & 0xFF | (data[at + 1] & 0xFF) << 8 | (data[at + 2] & 0xFF) << 16 | data[at + 3] << 24;
    }
}
