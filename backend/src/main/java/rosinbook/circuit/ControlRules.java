package rosinbook.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Rules about control and switch lines. */
final class ControlRules {
    /** A divider further from its target than this share of it misses (common practice, no source). */
    private static final double MISS_SHARE = 0.05;

    private ControlRules() {}

    static void check(Plugged plugged, Findings findings) {
        for (Contact contact : plugged.contacts) {
            if (contact.isControl() && !contact.isSynths()) {
                freeOfRails(plugged, contact, findings);
            }
            if (contact.isControl() && contact.isSynths() && !isOnShort(plugged, contact)) {
                List<String> sources = sources(plugged, contact);
                if (sources.size() > 1) {
                    findings.add(
                            Rule.DRIVEN_TWICE,
                            contact.point(),
                            plugged.routesAt(contact),
                            contact.describe() + " is driven by " + String.join(" and by ", sources) + " at once.",
                            "Keep one of them, or put a switch between them.");
                } else {
                    voltage(plugged, contact, findings);
                }
            }
        }
    }

    /** A rail joined to ground is reported as such, and not once more for each line on it. */
    private static boolean isOnShort(Plugged plugged, Contact contact) {
        return plugged.isGrounded(contact)
                && plugged.joinedWith(contact).stream().anyMatch(Contact::isSupply);
    }

    /** Whether the instrument, not the adapter, decides a control pin's voltage. */
    static boolean isSetByInstrument(Plugged plugged, Contact contact) {
        return plugged.contacts.stream()
                .filter(other -> !other.isSynths() && other.isControl())
                .anyMatch(other -> plugged.reachedFrom(other).contains(contact));
    }

    private static List<String> sources(Plugged plugged, Contact contact) {
        int net = plugged.nets.of(contact.point());
        List<String> sources = new ArrayList<>();
        for (Contact other : plugged.contacts) {
            boolean rail = other.isSupply() && other.isSynths() && plugged.nets.of(other.point()) == net;
            boolean instruments = !other.isSynths()
                    && other.isControl()
                    && plugged.reachedFrom(other).contains(contact);
            if (rail || instruments) {
                sources.add(other.describe());
            }
        }
        for (Piece piece : plugged.layout.pieces()) {
            boolean fromRail = piece.part().equals("lead") && plugged.nets.of(piece.from()) == net;
            if (fromRail && isFromRail(plugged, piece.route())) {
                sources.add("the divider of route " + piece.route());
            }
        }
        if (plugged.isGrounded(contact)) {
            sources.add("ground");
        }
        return sources;
    }

    private static boolean isFromRail(Plugged plugged, String id) {
        return divider(plugged, id).supplyPin() != null;
    }

    private static Via.Divider divider(Plugged plugged, String id) {
        Via via = plugged.wiring.adapter().routes().get(id).via();
        return (Via.Divider)
                (via instanceof Via.Switch choice ? choice.positions().get(plugged.positions.get(id)) : via);
    }

    private static void freeOfRails(Plugged plugged, Contact contact, Findings findings) {
        plugged.joinedWith(contact).stream()
                .filter(other -> other.isSupply()
                        && plugged.joinedWith(contact).stream().noneMatch(end -> end.isSynths() && end.isControl()))
                .forEach(rail -> findings.add(
                        Rule.DRIVEN_TWICE,
                        contact.point(),
                        plugged.routesAt(contact),
                        contact.describe() + " gives a voltage of its own and is joined to " + rail.describe() + ".",
                        "Take away the wire between them."));
    }

    private static void voltage(Plugged plugged, Contact contact, Findings findings) {
        if (isSetByInstrument(plugged, contact)) {
            return;
        }
        ControlLine line = plugged.wiring.synth().controlLines().get(contact.line());
        double volts = plugged.volts(contact);
        boolean driven = plugged.layout.pieces().stream()
                .anyMatch(piece -> plugged.nets.of(piece.from()) == plugged.nets.of(contact.point())
                        || plugged.nets.of(piece.to()) == plugged.nets.of(contact.point()));
        if (!driven || Double.isNaN(volts)) {
            leftOpen(plugged, contact, findings);
            return;
        }
        if (line == null) {
            findings.add(
                    Rule.LINE_NOT_DESCRIBED,
                    contact.point(),
                    plugged.routesAt(contact),
                    contact.describe() + " gets " + Figures.volts(Figures.rounded(volts))
                            + ", and nobody described the line '" + contact.line() + "'.",
                    "Describe the line with its range in the synth's sheet, or leave the pin open.");
            return;
        }
        dividerHits(plugged, contact, line, volts, findings);
        range(plugged, contact, line, volts, findings);
    }

    private static void leftOpen(Plugged plugged, Contact contact, Findings findings) {
        boolean onPurpose = plugged.wiring.adapter().routes().values().stream()
                .anyMatch(route -> contact.label().equals(route.synthPin())
                        && PlainRules.ways(route.via()).stream().anyMatch(Via.Open.class::isInstance));
        if (!onPurpose) {
            findings.add(
                    Rule.CONTROL_LEFT_OPEN,
                    contact.point(),
                    List.of(),
                    contact.describe() + " gets no voltage; what the synth does then is up to the synth.",
                    "Feed it by a divider, or mark it as left open on purpose.");
        }
    }

    private static void range(Plugged plugged, Contact contact, ControlLine line, double volts, Findings findings) {
        WorstCase worst = plugged.worstCase(contact);
        String gets = contact.describe() + " gets " + Figures.volts(Figures.rounded(volts));
        String between = ", and with all tolerances anything from " + Figures.volts(Figures.rounded(worst.minVolts()))
                + " to " + Figures.volts(Figures.rounded(worst.maxVolts()));
        String range = Figures.volts(line.minVolts()) + " to " + Figures.volts(line.maxVolts());
        if (outside(line, volts)) {
            findings.add(
                    Rule.CONTROL_OUT_OF_RANGE,
                    contact.point(),
                    plugged.routesAt(contact),
                    gets + "; " + line.label() + " takes " + range + ".",
                    "Change the divider so that the voltage lies inside the range.");
            return;
        }
        Band band = band(line, volts);
        Band spilled = line.bands().stream()
                .filter(other ->
                        other != band && worst.maxVolts() >= other.fromVolts() && worst.minVolts() < other.toVolts())
                .findFirst()
                .orElse(null);
        if (spilled != null) {
            findings.add(
                    Rule.CONTROL_SPILLS,
                    contact.point(),
                    plugged.routesAt(contact),
                    gets + between + ", which reaches '" + spilled.meaning() + "'.",
                    "Aim at the middle of the wanted band, or use resistors of a closer tolerance.");
        } else if (outside(line, worst.minVolts())
                || outside(line, worst.maxVolts())
                || !line.bands().isEmpty() && !holds(band, worst)) {
            findings.add(
                    Rule.CONTROL_NEAR_LIMIT,
                    contact.point(),
                    plugged.routesAt(contact),
                    gets + between + ", which leaves " + (band == null ? range : "'" + band.meaning() + "'") + ".",
                    "Aim a little further from the limit.");
        }
    }

    private static boolean holds(Band band, WorstCase worst) {
        return band != null && band.contains(worst.minVolts()) && band.contains(worst.maxVolts());
    }

    private static boolean outside(ControlLine line, double volts) {
        double slack = 1e-9 * (line.maxVolts() - line.minVolts());
        return volts < line.minVolts() - slack || volts > line.maxVolts() + slack;
    }

    /** The band a voltage falls into; null for none. */
    static Band band(ControlLine line, double volts) {
        return line.bands().stream()
                .filter(band -> band.contains(volts))
                .findFirst()
                .orElse(null);
    }

    private static void dividerHits(
            Plugged plugged, Contact contact, ControlLine line, double volts, Findings findings) {
        for (Piece piece : plugged.layout.pieces()) {
            if (!piece.part().equals("lead") || !piece.to().equals(contact.point())) {
                continue;
            }
            Via.Divider divider = divider(plugged, piece.route());
            Pin supply = divider.supplyPin() == null
                    ? null
                    : plugged.wiring.synth().connector().pins().get(divider.supplyPin());
            if (supply == null
                    || !(supply.role() instanceof PinRole.Supply rail)
                    || plugged.circuit.volts(Plug.SYNTH.pin(divider.supplyPin())) != rail.volts()) {
                continue;
            }
            double open = rail.volts() * divider.lowerOhms() / (divider.upperOhms() + divider.lowerOhms());
            double target = divider.targetVolts() == null ? open : divider.targetVolts();
            boolean otherBand = !Objects.equals(band(line, volts), band(line, target));
            if (otherBand || Math.abs(volts - target) > MISS_SHARE * Math.abs(target) + 1e-12) {
                findings.add(
                        Rule.DIVIDER_MISSES,
                        "route " + piece.route(),
                        List.of(piece.route()),
                        "The divider should give " + Figures.volts(Figures.rounded(target)) + "; unloaded it gives "
                                + Figures.volts(Figures.rounded(open)) + ", and with what hangs on it "
                                + Figures.volts(Figures.rounded(volts)) + ".",
                        "Compute the divider again with the line's load.");
            }
        }
    }
}
