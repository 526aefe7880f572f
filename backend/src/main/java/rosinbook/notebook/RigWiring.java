package rosinbook.notebook;

import java.util.Map;
import java.util.TreeMap;
import rosinbook.circuit.Connector;
import rosinbook.circuit.InstrumentSide;
import rosinbook.circuit.SynthSide;
import rosinbook.circuit.WiringFile;
import rosinbook.pitch.Note;

/**
 * A rig as the wiring bench sees it.
 *
 * <p>Left out: how many cents a string is tuned away from its note, which moves no corner noticeably, and the reference
 * pitch, because the bench reckons with A4 = 440 Hz.
 */
public final class RigWiring {
    private RigWiring() {}

    /**
     * The wiring of a rig with the revisions of its instrument and synth that it holds.
     *
     * @throws NoSuchSheet if there is no such rig
     * @throws IllegalArgumentException if a connector is not written down
     */
    public static WiringFile find(Pages pages, Reference reference) {
        Rig rig = (Rig) Notebook.find(pages, Kind.RIGS, reference).content();
        return of(
                rig,
                (Instrument)
                        Notebook.find(pages, Kind.INSTRUMENTS, rig.instrument()).content(),
                (Synth) Notebook.find(pages, Kind.SYNTHS, rig.synth()).content());
    }

    /** @throws IllegalArgumentException if a connector is not written down */
    public static WiringFile of(Rig rig, Instrument instrument, Synth synth) {
        requireConnector("instrument", instrument.title(), instrument.connector());
        requireConnector("synth", synth.title(), synth.connector());
        return WiringFile.of(side(instrument), side(synth), rig.adapter(), rig.readings());
    }

    private static void requireConnector(String which, String title, Connector connector) {
        if (connector == null) {
            throw new IllegalArgumentException("the " + which + " of this rig, \"" + title
                    + "\", has no connector written down; describe its socket and pins first");
        }
    }

    private static InstrumentSide side(Instrument instrument) {
        Map<Integer, Note> openNotes = new TreeMap<>();
        instrument.strings().forEach((number, string) -> openNotes.put(Integer.valueOf(number), string.note()));
        return new InstrumentSide(instrument.connector(), openNotes, source(instrument.pickup()));
    }

    /** Nothing is predicted of a pickup whose capacitance nobody knows. */
    private static rosinbook.circuit.Pickup source(Instrument.Pickup pickup) {
        if (pickup == null || pickup.capacitancePicofarads() == null) {
            return null;
        }
        double metres = pickup.cableMetres() == null ? 0 : pickup.cableMetres();
        return new rosinbook.circuit.Pickup(pickup.capacitancePicofarads(), metres, pickup.cablePicofaradsPerMetre());
    }

    private static SynthSide side(Synth synth) {
        return new SynthSide(
                synth.connector(), synth.controlLines(), Map.of(), synth.inputOhms(), synth.supplyMilliamps());
    }
}
