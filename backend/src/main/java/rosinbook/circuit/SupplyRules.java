package rosinbook.circuit;

import java.util.List;

/** Rules about rails and grounds that are joined by wires. */
final class SupplyRules {
    /** More than this on a signal pin is no signal, V. */
    private static final double SIGNAL_VOLTS = 0.05;
    /** Rails closer than this are taken for the same, as a share. */
    private static final double SAME_RAIL_SHARE = 0.05;

    private SupplyRules() {}

    static void check(Plugged plugged, Findings findings) {
        plugged.byNet().forEach((net, joined) -> {
            List<Contact> rails = joined.stream().filter(Contact::isSupply).toList();
            for (int i = 0; i < rails.size(); i++) {
                for (Contact other : rails.subList(i + 1, rails.size())) {
                    railsJoined(plugged, rails.get(i), other, findings);
                }
                alone(plugged, rails.get(i), joined, findings);
            }
        });
        steadyVoltsOnSignals(plugged, findings);
        preampsOnRails(plugged, findings);
        groundsJoined(plugged, findings);
    }

    /** A short to ground hides everything else on its net, so that alone is said. */
    private static void alone(Plugged plugged, Contact rail, List<Contact> joined, Findings findings) {
        String ground = joined.stream()
                .filter(Contact::isGround)
                .map(Contact::point)
                .findFirst()
                .orElse(plugged.isGrounded(rail) ? plugged.layout.ground() : null);
        if (ground != null) {
            findings.add(
                    Rule.RAIL_TO_GROUND,
                    rail.point(),
                    plugged.routesBetween(rail.point(), ground),
                    rail.describe() + " is joined to ground: a short circuit.",
                    "Take away the wire between them.");
            return;
        }
        for (Contact contact : joined) {
            if (contact.isSignal()) {
                findings.add(
                        Rule.RAIL_INTO_SIGNAL,
                        contact.point(),
                        plugged.routesBetween(rail.point(), contact.point()),
                        rail.describe() + " is joined to " + contact.describe() + ".",
                        "Take away the wire; no signal pin may get a supply voltage.");
            }
        }
    }

    private static void railsJoined(Plugged plugged, Contact rail, Contact other, Findings findings) {
        double volts = ((PinRole.Supply) rail.role()).volts();
        double otherVolts = ((PinRole.Supply) other.role()).volts();
        String sentence = rail.describe() + " is joined to " + other.describe() + ".";
        if (Math.abs(volts - otherVolts) > SAME_RAIL_SHARE * Math.max(Math.abs(volts), Math.abs(otherVolts))) {
            findings.add(
                    Rule.RAIL_TO_RAIL,
                    rail.point(),
                    plugged.routesBetween(rail.point(), other.point()),
                    sentence,
                    "Take away the wire; never bridge supply rails.");
        } else if (rail.plug() == other.plug()) {
            findings.add(
                    Rule.DRIVEN_TWICE,
                    rail.point(),
                    plugged.routesBetween(rail.point(), other.point()),
                    sentence + " Two rails of the same voltage still push against each other.",
                    "Use one of them and leave the other open.");
        }
    }

    private static void steadyVoltsOnSignals(Plugged plugged, Findings findings) {
        for (Contact contact : plugged.contacts) {
            boolean onRail = plugged.joinedWith(contact).stream().anyMatch(Contact::isSupply);
            double volts = plugged.volts(contact);
            if (contact.isSignal() && !onRail && Math.abs(volts) > SIGNAL_VOLTS) {
                findings.add(
                        Rule.RAIL_INTO_SIGNAL,
                        contact.point(),
                        plugged.routesAt(contact),
                        contact.describe() + " is held at " + Figures.volts(Figures.rounded(volts))
                                + " by a resistor from" + " a supply.",
                        "Take that resistor away; a signal pin must rest at 0 V.");
            }
        }
    }

    private static void preampsOnRails(Plugged plugged, Findings findings) {
        for (Amp amp : plugged.layout.amps()) {
            for (String end : List.of(amp.from(), amp.to())) {
                plugged.contacts.stream()
                        .filter(contact ->
                                contact.isSupply() && plugged.nets.of(contact.point()) == plugged.nets.of(end))
                        .findFirst()
                        .ifPresent(rail -> findings.add(
                                Rule.RAIL_INTO_SIGNAL,
                                rail.point(),
                                List.of(amp.route()),
                                "A preamp's " + (end.equals(amp.to()) ? "output" : "input") + " is joined to "
                                        + rail.describe() + ".",
                                "Lead it to a signal pin; a rail only feeds the preamp."));
            }
        }
    }

    private static void groundsJoined(Plugged plugged, Findings findings) {
        List<Contact> grounds =
                plugged.contacts.stream().filter(Contact::isGround).toList();
        for (Plug plug : Plug.values()) {
            if (grounds.stream().noneMatch(ground -> ground.plug() == plug)) {
                findings.add(
                        Rule.GROUNDS_APART,
                        plug.name().toLowerCase(java.util.Locale.ROOT) + " connector",
                        List.of(),
                        "None of its pins is known to be ground.",
                        "Find the ground pin with a meter and join both grounds first of all.");
                return;
            }
        }
        boolean joined = grounds.stream().filter(ground -> !ground.isSynths()).anyMatch(plugged::isGrounded);
        if (!joined) {
            findings.add(
                    Rule.GROUNDS_APART,
                    "both grounds",
                    List.of(),
                    "The instrument's ground is not joined to the synth's by a wire, so that currents would find their way"
                            + " back through signal pins.",
                    "Join a ground pin of the instrument straight to a ground pin of the synth.");
        }
    }
}
