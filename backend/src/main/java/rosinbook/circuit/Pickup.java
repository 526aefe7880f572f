package rosinbook.circuit;

/**
 * What is known of a per-string pickup as an electrical source.
 *
 * @param sourcePicofarads capacitance of one string's element, pF, 1 to 1 000 000
 * @param cableMetres screened cable from the element to the first resistance it meets, 0 to 100 m
 * @param cablePicofaradsPerMetre capacitance of that cable, 10 to 1000 pF/m; 100 if left out (common practice: 60 to 150)
 */
public record Pickup(double sourcePicofarads, double cableMetres, Double cablePicofaradsPerMetre) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public Pickup {
        Require.within("sourcePicofarads", sourcePicofarads, 1, 1_000_000, "picofarads");
        Require.within("cableMetres", cableMetres, 0, 100, "metres");
        cablePicofaradsPerMetre = cablePicofaradsPerMetre == null ? 100.0 : cablePicofaradsPerMetre;
        Require.within("cablePicofaradsPerMetre", cablePicofaradsPerMetre, 10, 1000, "picofarads per metre");
    }
}
