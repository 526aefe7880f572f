package rosinbook.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * An adapter taken apart into pieces, for one setting of its switches. Routes that name a pin which is not there are left
 * out; {@link Rule#PIN_NOT_THERE} reports them.
 */
record Layout(List<Piece> pieces, List<Amp> amps, String ground) {
    static Layout of(Wiring wiring, Map<String, String> positions) {
        String ground = groundOf(wiring);
        List<Piece> pieces = new ArrayList<>();
        List<Amp> amps = new ArrayList<>();
        wiring.adapter().routes().forEach((id, route) -> {
            Via via = route.via() instanceof Via.Switch choice
                    ? choice.positions().get(positions.get(id))
                    : route.via();
            if (missingPin(wiring, route, via) == null) {
                lay(id, route, via, ground, pieces, amps);
            }
        });
        return new Layout(List.copyOf(pieces), List.copyOf(amps), ground);
    }

    /** Where the adapter's ground is soldered: the synth's first ground pin, else the instrument's. */
    private static String groundOf(Wiring wiring) {
        return Contact.of(wiring).stream()
                .filter(Contact::isGround)
                .min((a, b) -> b.plug().compareTo(a.plug()))
                .map(Contact::point)
                .orElse("the adapter's ground");
    }

    /** The first pin a route names that its connector does not have, as a sentence names it; null when all are there. */
    static String missingPin(Wiring wiring, Route route, Via via) {
        Map<String, Pin> synth = wiring.synth().connector().pins();
        if (route.instrumentPin() != null
                && !wiring.instrument().connector().pins().containsKey(route.instrumentPin())) {
            return Plug.INSTRUMENT.pin(route.instrumentPin());
        }
        if (route.synthPin() != null && !synth.containsKey(route.synthPin())) {
            return Plug.SYNTH.pin(route.synthPin());
        }
        if (via instanceof Via.Divider divider
                && divider.supplyPin() != null
                && !synth.containsKey(divider.supplyPin())) {
            return Plug.SYNTH.pin(divider.supplyPin());
        }
        return null;
    }

    private static void lay(String id, Route route, Via via, String ground, List<Piece> pieces, List<Amp> amps) {
        String from = route.instrumentPin() == null ? null : Plug.INSTRUMENT.pin(route.instrumentPin());
        String to = route.synthPin() == null ? null : Plug.SYNTH.pin(route.synthPin());
        if (via instanceof Via.Straight) {
            pieces.add(new Piece(id, "wire", from, to, 0));
        } else if (via instanceof Via.Resistor resistor) {
            pieces.add(new Piece(id, "resistor", from, to, resistor.ohms()));
        } else if (via instanceof Via.Preamp preamp) {
            amps.add(new Amp(id, from, to, preamp));
        } else if (via instanceof Via.Divider divider) {
            String top = divider.supplyPin() == null ? from : Plug.SYNTH.pin(divider.supplyPin());
            String middle = "middle of " + id;
            pieces.add(new Piece(id, "upper", top, middle, divider.upperOhms()));
            pieces.add(new Piece(id, "lower", middle, ground, divider.lowerOhms()));
            pieces.add(new Piece(id, "lead", middle, to, 0));
        } else if (via instanceof Via.Tied tied) {
            pieces.add(new Piece(id, "tie", to == null ? from : to, ground, tied.ohms()));
        }
    }
}
