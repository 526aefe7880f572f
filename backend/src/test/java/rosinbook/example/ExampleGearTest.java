package rosinbook.example;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rosinbook.circuit.Band;
import rosinbook.circuit.Pin;
import rosinbook.circuit.PinRole;
import rosinbook.circuit.Route;
import rosinbook.circuit.Via;
import rosinbook.notebook.Instrument;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Rig;
import rosinbook.notebook.Synth;

class ExampleGearTest {
    private static WrittenExample example;

    @BeforeAll
    static void write() {
        example = new WrittenExample(LocalDate.of(2026, 11, 19));
    }

    @AfterAll
    static void close() {
        example.close();
    }

    @Test
    void half_of_the_old_socket_was_unknown_and_is_found_out_bit_by_bit() {
        List<Long> unknown = example.history(Season.id("green-violin")).stream()
                .map(revision -> ((Instrument) revision.content())
                        .connector().pins().values().stream()
                                .filter(pin -> pin.role() instanceof PinRole.Unknown)
                                .count())
                .toList();
        assertEquals(List.of(4L, 2L, 1L, 0L), unknown);
    }

    @Test
    void the_five_string_goes_down_to_a_low_c() {
        // C3 is MIDI note 48; 130.81 Hz at A4 = 440 Hz by equal temperament (ISO 16).
        Instrument asBuilt =
                (Instrument) example.history(Season.id("five-string")).get(0).content();
        assertEquals(48, asBuilt.strings().get("5").note().midi());
        assertEquals(130.81, asBuilt.strings().get("5").hertz(asBuilt.referencePitchHertz()), 0.005);
    }

    @Test
    void sensitivities_start_at_the_customary_value_and_are_tried_out() {
        assertEquals(List.of(20.0, 20.0, 16.0, 14.0, 14.0, 15.0, 15.0, 15.0, 17.0), sensitivities("violin-rig", 1));
        assertEquals(List.of(20.0, 27.0, 31.0, 29.0, 33.0, 33.0, 34.0, 32.0), sensitivities("violin-rig", 4));
        assertEquals(List.of(20.0, 30.0, 34.0, 36.0, 36.0), sensitivities("five-string-rig", 5));
    }

    private static List<Double> sensitivities(String rig, int string) {
        return example.look(pages -> pages.stringHistory(Season.id(rig)).get(string)).stream()
                .flatMap(setting -> setting.sensitivity().stream())
                .toList();
    }

    @Test
    void adapters_join_only_pins_that_are_there_and_known() {
        for (Revision revision : example.history(Season.id("violin-rig"))) {
            Rig rig = (Rig) revision.content();
            Instrument violin = example.look(pages -> instrument(pages, rig));
            Synth synth = example.content("stage-synth", Synth.class);
            for (Route route : rig.adapter().routes().values()) {
                if (route.instrumentPin() != null) {
                    Pin pin = violin.connector().pins().get(route.instrumentPin());
                    assertNotNull(pin);
                    assertTrue(!(pin.role() instanceof PinRole.Unknown), () -> "pin " + route.instrumentPin());
                }
                assertTrue(route.synthPin() == null || synth.connector().pins().containsKey(route.synthPin()));
            }
        }
    }

    private static Instrument instrument(Pages pages, Rig rig) {
        return (Instrument)
                Notebook.find(pages, Kind.INSTRUMENTS, rig.instrument()).content();
    }

    @Test
    void the_source_switch_chooses_what_it_says() {
        assertEquals("straight sound and voices", chosenBy("both"));
        assertEquals("voices only", chosenBy("voices"));
    }

    /** A rail over two resistors, the lower one with the line's load beside it (Kuphaldt, Lessons in Electric Circuits I, ch. 6). */
    private static String chosenBy(String position) {
        var source = example.content("stage-synth", Synth.class).controlLines().get("source");
        var choice = (Via.Switch) example.content("violin-rig", Rig.class)
                .adapter()
                .routes()
                .get("source")
                .via();
        var divider = (Via.Divider) choice.positions().get(position);
        double lower = 1 / (1 / divider.lowerOhms() + 1 / source.loadOhms());
        double volts = 9 * lower / (divider.upperOhms() + lower);
        assertEquals(divider.targetVolts(), volts, 0.1);
        return source.bands().stream()
                .filter(band -> band.contains(volts))
                .map(Band::meaning)
                .findFirst()
                .orElseThrow();
    }
}
