package rosinbook.circuit;

/**
 * A piezo element as a voltage behind a capacitance, feeding a cable and a resistance to ground.
 *
 * <p>The cable shares the charge: it lowers the level of every note, and lowers the corner too, unlike a cable behind a
 * resistive source, which dulls the treble. The element's own resonance and the bridge are left out: this is what wiring
 * does, not what the pickup sounds like.
 *
 * @param sourceFarads F, above 0
 * @param cableFarads F, 0 or more
 * @param inputOhms Ω, above 0
 * @see "Measurement Specialties, Piezo Film Sensors Technical Manual, Frequency Response"
 */
public record PiezoSource(double sourceFarads, double cableFarads, double inputOhms) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public PiezoSource {
        if (!(sourceFarads > 0 && sourceFarads <= 1)) {
            throw new IllegalArgumentException(
                    "sourceFarads is " + sourceFarads + "; give farads above 0 (500 pF is 500e-12)");
        }
        Require.within("cableFarads", cableFarads, 0, 1, "farads");
        Require.ohms("inputOhms", inputOhms);
    }

    /** A pickup with its cable into a resistance. */
    public static PiezoSource of(Pickup pickup, double inputOhms) {
        return new PiezoSource(
                pickup.sourcePicofarads() * 1e-12,
                pickup.cableMetres() * pickup.cablePicofaradsPerMetre() * 1e-12,
                inputOhms);
    }

    /** Corner of the high-pass, f = 1 / (2π R C) with both capacitances, Hz. */
    public double cornerHertz() {
        return 1 / (2 * Math.PI * inputOhms * (sourceFarads + cableFarads));
    }

    /** What the cable takes from every note, dB, 0 or below. */
    public double cableDecibels() {
        return 20 * Math.log10(sourceFarads / (sourceFarads + cableFarads));
    }

    /** What the high-pass takes at a frequency, dB, 0 or below. */
    public double cornerDecibels(double hertz) {
        double ratio = cornerHertz() / hertz;
        return -10 * Math.log10(1 + ratio * ratio);
    }
}
