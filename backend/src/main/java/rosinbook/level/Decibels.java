package rosinbook.level;

/**
 * Powers and amplitudes in decibels.
 *
 * <p>Full scale is the amplitude 1. A plain figure here is 10·log10 of the mean square, so a full-scale square wave reads 0
 * and a full-scale sine −3.01 dBFS. AES17 calls the full-scale sine 0 dBFS and therefore reads {@link #AES17_OFFSET} higher.
 */
public final class Decibels {
    /** What AES17 adds to a plain rms figure: 10·log10(2), about 3.01 dB. */
    public static final double AES17_OFFSET = 10 * Math.log10(2);

    private Decibels() {}

    /** Decibels of a power or mean square; 0 gives minus infinity. */
    public static double ofPower(double power) {
        return 10 * Math.log10(power);
    }

    /** Decibels of an amplitude or rms value; 0 gives minus infinity. */
    public static double ofAmplitude(double amplitude) {
        return 20 * Math.log10(amplitude);
    }

    /** The power that reads this many decibels; the inverse of {@link #ofPower}. */
    public static double toPower(double decibels) {
        return Math.pow(10, decibels / 10);
    }
}
