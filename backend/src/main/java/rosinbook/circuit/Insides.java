package rosinbook.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What the instrument and the synth put on the adapter from inside: joined grounds, loads, rails. */
final class Insides {
    /** How far a rail may be off when nobody stated it, as a share (common practice, no source). */
    static final double USUAL_RAIL_SHARE = 0.05;

    private Insides() {}

    static double railShare(PinRole.Supply supply) {
        return supply.tolerancePercent() == null ? USUAL_RAIL_SHARE : supply.tolerancePercent() / 100;
    }

    /** Both devices plugged in. */
    static List<Piece> of(Wiring wiring, String ground) {
        List<Piece> pieces = new ArrayList<>(ofSynth(wiring, ground));
        joinGrounds(wiring, Plug.INSTRUMENT, pieces);
        return pieces;
    }

    /** Only the synth plugged in. */
    static List<Piece> ofSynth(Wiring wiring, String ground) {
        List<Piece> pieces = new ArrayList<>();
        joinGrounds(wiring, Plug.SYNTH, pieces);
        for (Contact contact : Contact.of(wiring)) {
            if (contact.isSynths()) {
                double ohms = loadOhms(wiring, contact);
                if (ohms > 0) {
                    pieces.add(new Piece("", "load", contact.point(), ground, ohms));
                }
            }
        }
        return pieces;
    }

    /** What the synth and the preamps hold steady: ground at 0 V, rails, preamp outputs at 0 V. */
    static Map<String, Double> heldVolts(Wiring wiring, Layout layout) {
        Map<String, Double> held = new LinkedHashMap<>();
        held.put(layout.ground(), 0.0);
        for (Contact contact : Contact.of(wiring)) {
            if (contact.isSynths() && contact.role() instanceof PinRole.Supply supply) {
                held.put(contact.point(), supply.volts());
            }
        }
        layout.amps().forEach(amp -> held.putIfAbsent(amp.to(), 0.0));
        return held;
    }

    /** Resistance of a synth pin to ground inside the synth, Ω; 0 for none that matters. */
    static double loadOhms(Wiring wiring, Contact contact) {
        if (contact.isSignal()) {
            return wiring.synth().inputOhmsOrUsual();
        }
        ControlLine line =
                contact.line() == null ? null : wiring.synth().controlLines().get(contact.line());
        return line == null || line.loadOhms() == null ? 0 : line.loadOhms();
    }

    private static void joinGrounds(Wiring wiring, Plug plug, List<Piece> pieces) {
        List<Contact> grounds = Contact.of(wiring).stream()
                .filter(contact -> contact.plug() == plug && contact.isGround())
                .toList();
        for (int i = 1; i < grounds.size(); i++) {
            pieces.add(new Piece(
                    "", "ground", grounds.get(0).point(), grounds.get(i).point(), 0));
        }
    }
}
