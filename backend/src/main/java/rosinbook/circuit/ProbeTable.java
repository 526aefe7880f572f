package rosinbook.circuit;

import java.util.Map;
import java.util.stream.IntStream;

/**
 * Readings of an unknown connector: pins down, conditions across.
 *
 * @param strings how many the instrument has, 1 to 12
 * @param pins readings by pin label, 1 to 40
 */
public record ProbeTable(int strings, Map<String, PinProbe> pins) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public ProbeTable {
        Require.within("strings", strings, 1, 12, "a number");
        pins = Require.keyed("pins", pins, 1, 40, 12);
        int most = strings;
        pins.forEach((label, probe) -> probe.bowed().keySet().stream()
                .filter(string -> string > most)
                .findFirst()
                .ifPresent(string -> {
                    throw new IllegalArgumentException("pins has a reading of pin " + label + " for string " + string
                            + ", but the instrument has " + most);
                }));
    }

    /** 1 to the number of strings. */
    IntStream stringNumbers() {
        return IntStream.rangeClosed(1, strings);
    }
}
