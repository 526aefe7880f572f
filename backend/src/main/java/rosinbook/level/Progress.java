package rosinbook.level;

/** Told now and then how far a long measurement has come. */
@FunctionalInterface
public interface Progress {
    /** Nobody wants to know. */
    Progress NONE = fraction -> {};

    /** @param fraction how much is done, 0 to 1, never falling */
    void at(double fraction);
}
