package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Map;
import java.util.stream.Stream;
import rosinbook.circuit.Connector;
import rosinbook.circuit.PinProbe;
import rosinbook.pitch.Note;

/**
 * The bowed instrument.
 *
 * @param strings 4 to 7, keyed {@code "1"} (highest) upward without gaps
 * @param referencePitchHertz what A4 is tuned to, 380 to 480 Hz
 * @param connector its socket; absent while nothing is known of it
 * @param pickup what is known of the pickup; absent if nothing
 * @param probe what a meter showed at the connector's pins, by label; absent while nothing was measured
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Instrument(
        String title,
        Map<String, OpenString> strings,
        Double referencePitchHertz,
        Connector connector,
        Pickup pickup,
        Map<String, PinProbe> probe,
        String notes)
        implements Content {
    private static final int MAX_PINS = 40;
    private static final int MAX_LABEL_LENGTH = 12;

    public Instrument {
        title = Require.title("title", title);
        strings = Require.keyed("strings", strings, 7);
        if (strings.size() < 4) {
            throw new IllegalArgumentException("strings has " + strings.size() + "; an instrument has 4 to 7");
        }
        for (int number = 1; number <= strings.size(); number++) {
            if (!strings.containsKey(Integer.toString(number))) {
                throw new IllegalArgumentException(
                        "strings has no \"" + number + "\"; number them 1 (highest) to " + strings.size());
            }
        }
        referencePitchHertz = Require.within(
                "referencePitchHertz", referencePitchHertz == null ? 440 : referencePitchHertz, 380, 480, "Hz");
        probe = Require.labelled("probe", probe, MAX_PINS, MAX_LABEL_LENGTH);
        probe = probe.isEmpty() ? null : probe;
        notes = Require.text("notes", notes);
    }

    @Override
    public Stream<String> searchWords() {
        return Stream.of(notes);
    }

    /**
     * One string, untouched by a finger.
     *
     * @param note nearest tempered note
     * @param cents how far it is tuned above that note, -100 to 100
     */
    public record OpenString(Note note, Double cents) {
        public OpenString {
            Require.present("note", note);
            cents = Require.within("cents", cents == null ? 0 : cents, -100, 100, "cents");
        }

        /** Frequency in Hz. */
        public double hertz(double referenceHertz) {
            return note.hertz(referenceHertz) * Math.pow(2, cents / 1200);
        }
    }

    /**
     * Pickup facts.
     *
     * @param capacitancePicofarads of one string's element, above 0; absent if not measured
     * @param cableMetres screened cable from the element to the first resistance it meets; absent if not known
     * @param cablePicofaradsPerMetre capacitance of that cable; absent for the usual 100
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Pickup(
            Double capacitancePicofarads, Double cableMetres, Double cablePicofaradsPerMetre, String notes) {
        public Pickup {
            if (capacitancePicofarads != null) {
                Require.within("capacitancePicofarads", capacitancePicofarads, 1, 1e6, "pF");
            }
            if (cableMetres != null) {
                Require.within("cableMetres", cableMetres, 0, 100, "m");
            }
            if (cablePicofaradsPerMetre != null) {
                Require.within("cablePicofaradsPerMetre", cablePicofaradsPerMetre, 10, 1000, "pF/m");
            }
            notes = Require.text("notes", notes);
        }
    }
}
