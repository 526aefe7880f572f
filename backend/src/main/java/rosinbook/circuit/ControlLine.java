package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Comparator;
import java.util.List;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/**
 * A line that the synth reads as a voltage.
 *
 * @param label in the player's words, 1 to 80 characters
 * @param minVolts lowest voltage the synth may be given, V
 * @param maxVolts highest voltage the synth may be given, V, above {@code minVolts}
 * @param loadOhms resistance from the line to ground inside the synth, Ω; absent when so high that it does not matter
 * @param bands what stretches of voltage mean, none overlapping, inside the range, kept in rising order; empty when the
 *     line is continuous
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ControlLine(String label, double minVolts, double maxVolts, Double loadOhms, List<Band> bands) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public ControlLine {
        label = Require.line("label", label, 1, 80);
        Require.within("minVolts", minVolts, -60, 60, "volts");
        Require.within("maxVolts", maxVolts, -60, 60, "volts");
        if (minVolts >= maxVolts) {
            throw new IllegalArgumentException("maxVolts is " + Figures.plain(maxVolts)
                    + "; give volts above minVolts, which is " + Figures.plain(minVolts));
        }
        if (loadOhms != null) {
            Require.ohms("loadOhms", loadOhms);
        }
        bands = sorted(bands == null ? List.of() : bands);
        for (int i = 0; i < bands.size(); i++) {
            Band band = bands.get(i);
            if (band.fromVolts() < minVolts || band.toVolts() > maxVolts) {
                throw new IllegalArgumentException(
                        "bands has '" + band.meaning() + "' outside " + Figures.plain(minVolts) + " to "
                                + Figures.plain(maxVolts) + " V; move the band or widen the range");
            }
            if (i > 0 && bands.get(i - 1).toVolts() > band.fromVolts()) {
                throw new IllegalArgumentException(
                        "bands has '" + bands.get(i - 1).meaning() + "' overlapping '" + band.meaning()
                                + "'; let one end where the other begins");
            }
        }
    }

    private static List<Band> sorted(List<Band> bands) {
        if (bands.size() > 40) {
            throw new PastLimit(Limit.ENTRIES, "bands has " + bands.size() + " entries; give at most 40");
        }
        bands.forEach(band -> Require.present("bands", band, "an entry holds nothing"));
        return bands.stream().sorted(Comparator.comparing(Band::fromVolts)).toList();
    }
}
