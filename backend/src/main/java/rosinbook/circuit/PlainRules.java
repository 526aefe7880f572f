package rosinbook.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Rules that need no circuit: pins that are not there or not known, odd values, drawings from the wrong side. */
final class PlainRules {
    private PlainRules() {}

    static void check(Wiring wiring, Findings findings) {
        wiring.adapter().routes().forEach((id, route) -> {
            for (Via via : ways(route.via())) {
                pinsAreThere(wiring, id, route, via, findings);
                valuesAreMade(wiring.adapter().parts().series(), id, via, findings);
            }
        });
        for (Contact contact : Contact.of(wiring)) {
            pinIsKnown(wiring, contact, findings);
        }
        for (Plug plug : Plug.values()) {
            drawnFromMatingSide(plug, plug.connector(wiring), findings);
        }
        notMirrored(wiring, findings);
    }

    /** A via itself, or what each position of a switch does. */
    static List<Via> ways(Via via) {
        return via instanceof Via.Switch choice ? List.copyOf(choice.positions().values()) : List.of(via);
    }

    private static void pinsAreThere(Wiring wiring, String id, Route route, Via via, Findings findings) {
        String missing = Layout.missingPin(wiring, route, via);
        if (missing != null) {
            findings.add(
                    Rule.PIN_NOT_THERE,
                    "route " + id,
                    List.of(id),
                    "The route names " + missing + ", which is not in that connector's table.",
                    "Correct the pin's label, or add the pin to the table; the route was not checked.");
        }
    }

    private static void pinIsKnown(Wiring wiring, Contact contact, Findings findings) {
        if (!(contact.role() instanceof PinRole.Unknown)) {
            return;
        }
        List<String> routes = new ArrayList<>();
        wiring.adapter().routes().forEach((id, route) -> {
            if (ways(route.via()).stream().anyMatch(via -> touches(route, via, contact))) {
                routes.add(id);
            }
        });
        if (!routes.isEmpty()) {
            findings.add(
                    Rule.UNKNOWN_PIN_JOINED,
                    contact.point(),
                    routes,
                    "Nobody knows yet what " + contact.point() + " carries, and it is joined to something; it may be a"
                            + " supply rail.",
                    "Find out with a meter what it carries, or leave it open.");
        }
    }

    private static boolean touches(Route route, Via via, Contact contact) {
        if (via instanceof Via.Open) {
            return false;
        }
        if (!contact.isSynths()) {
            return contact.label().equals(route.instrumentPin());
        }
        boolean feeds = via instanceof Via.Divider divider && contact.label().equals(divider.supplyPin())
                || via instanceof Via.Preamp preamp
                        && (contact.label().equals(preamp.supplyPin())
                                || contact.label().equals(preamp.negativeSupplyPin()));
        return feeds || contact.label().equals(route.synthPin());
    }

    private static void valuesAreMade(Series series, String id, Via via, Findings findings) {
        List<Double> values = new ArrayList<>();
        if (via instanceof Via.Resistor resistor) {
            values.add(resistor.ohms());
        } else if (via instanceof Via.Divider divider) {
            values.addAll(List.of(divider.upperOhms(), divider.lowerOhms()));
        } else if (via instanceof Via.Tied tied && tied.ohms() > 0) {
            values.add(tied.ohms());
        }
        for (double ohms : values) {
            double nearest = series.nearest(Math.max(ohms, 1e-3));
            if (Math.abs(nearest - ohms) > ohms * 1e-6) {
                findings.add(
                        Rule.VALUE_NOT_MADE,
                        "route " + id,
                        List.of(id),
                        Figures.ohms(ohms) + " is no value of the series " + series + ".",
                        "Take " + Figures.ohms(nearest) + ", or choose the series the resistor is from.");
            }
        }
    }

    private static void drawnFromMatingSide(Plug plug, Connector connector, Findings findings) {
        boolean placed = connector.pins().values().stream().anyMatch(pin -> pin.x() != null);
        if (placed && connector.drawnFrom() == Side.SOLDER) {
            findings.add(
                    Rule.DRAWN_FROM_WRONG_SIDE,
                    plug.name().toLowerCase(java.util.Locale.ROOT) + " connector",
                    List.of(),
                    "The positions of its pins were noted from the solder side, which mirrors them.",
                    "Look at the face that meets the other connector and mirror the positions if they match only from"
                            + " behind; then confirm two pins with a meter.");
        }
    }

    private static void notMirrored(Wiring wiring, Findings findings) {
        Connector one = wiring.instrument().connector();
        Connector other = wiring.synth().connector();
        boolean sameKind = !one.shape().isEmpty()
                && one.shape().equalsIgnoreCase(other.shape())
                && one.drawnFrom() == other.drawnFrom()
                && one.pins().keySet().equals(other.pins().keySet());
        if (sameKind && !alike(one.pins(), other.pins(), 1) && alike(one.pins(), other.pins(), -1)) {
            findings.add(
                    Rule.DRAWN_FROM_WRONG_SIDE,
                    "both connectors",
                    List.of(),
                    "Both connectors have the same shape, and their pins lie like in a mirror: a plug beside a socket, or"
                            + " one of them drawn from the wrong side.",
                    "Look at both mating faces and confirm two pins of each with a meter before soldering.");
        }
    }

    private static boolean alike(Map<String, Pin> pins, Map<String, Pin> others, int mirror) {
        return pins.size() > 2
                && pins.entrySet().stream().allMatch(entry -> {
                    Pin pin = entry.getValue();
                    Pin other = others.get(entry.getKey());
                    return pin.x() != null
                            && other.x() != null
                            && Math.abs(pin.x() - mirror * other.x()) < 0.05
                            && Math.abs(pin.y() - other.y()) < 0.05;
                });
    }
}
