package rosinbook.level;

/** The frequency of the mains. */
public enum Mains {
    /** Whichever of 50 and 60 Hz is heard more. */
    FIND(0),
    HERTZ_50(50),
    HERTZ_60(60);

    private final int hertz;

    Mains(int hertz) {
        this.hertz = hertz;
    }

    /** Hz; 0 for {@link #FIND}. */
    public int hertz() {
        return hertz;
    }

    /** @throws IllegalArgumentException if the frequency is neither 50 nor 60 Hz */
    public static Mains of(int hertz) {
        return switch (hertz) {
            case 50 -> HERTZ_50;
            case 60 -> HERTZ_60;
            default -> throw new IllegalArgumentException("mains of " + hertz + " Hz; give 50 or 60");
        };
    }
}
