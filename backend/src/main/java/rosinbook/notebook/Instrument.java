package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Map;
import java.util.stream.Stream;
import rosinbook.circuit.Connector;
import rosinbook.pitch.Note;

/**
 * The bowed instrument.
 *
 * @param strings 4 to 7, keyed {@code "1"} (highest) upward without gaps
 * @param referencePitchHertz what A4 is tuned to, 380 to 480 Hz
 * @param connector its socket; absent while nothing is known of it
 * @param pickup what is known of the pickup; absent if nothing
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Instrument(
        String title,
        Map<String, OpenString> strings,
        Double referencePitchHertz,
        Connector connector,
        Pickup pickup,
        String notes)
        implements Content {
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
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Pickup(Double capacitancePicofarads, String notes) {
        public Pickup {
            if (capacitancePicofarads != null) {
                Require.within("capacitancePicofarads", capacitancePicofarads, 1, 1e6, "pF");
            }
            notes = Require.text("notes", notes);
        }
    }
}
