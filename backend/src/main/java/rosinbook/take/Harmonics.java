package rosinbook.take;

/** How likely a tracker takes one note for another so many semitones away: harmonics of a string. */
final class Harmonics {
    private Harmonics() {}

    /** 1 for the octave, the twelfth and two octaves; less for what is rarer; 0 for any other interval. */
    static double share(int from, int to) {
        return switch (Math.abs(from - to)) {
            case 12, 19, 24 -> 1;
            case 20 -> 0.5;
            case 28, 31 -> 1 / 3.0;
            case 7 -> 0.2;
            default -> 0;
        };
    }
}
