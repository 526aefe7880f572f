package rosinbook.take;

import java.util.Map;
import rosinbook.pitch.Note;

/**
 * One string of a take.
 *
 * @param string 1 = highest
 * @param open its open note
 * @param notes notes heard on it
 * @param kept notes left once faults are mended
 * @param faults how many of each kind; kinds without any are left out
 * @param faultsPerMinute all kinds together, of the whole take's time
 */
public record StringReport(
        int string, Note open, int notes, int kept, Map<FaultKind, Integer> faults, double faultsPerMinute) {
    /** Copies the map. */
    public StringReport {
        faults = Map.copyOf(faults);
    }
}
