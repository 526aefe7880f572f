package rosinbook.circuit;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Writes the steps of a meter plan for one setting of the switches. */
final class MeterPlanWriter {
    private static final double METER_SHARE = 0.01;
    private static final double QUIET_VOLTS = 0.05;

    private final Wiring wiring;
    private final String switches;
    private final Bench bench;
    private final Nets nets;
    private final Plugged plugged;
    private final List<Contact> contacts;
    private final double partShare;
    private final Map<String, MeterStep> steps = new LinkedHashMap<>();
    private final Set<Set<Integer>> apart = new HashSet<>();

    MeterPlanWriter(Wiring wiring, Map<String, String> state) {
        this.wiring = wiring;
        switches = SwitchStates.describe(state);
        bench = new Bench(wiring, state, Fault.NONE);
        contacts = Contact.of(wiring);
        nets = new Nets(
                contacts.stream().map(Contact::point).toList(), bench.layout().pieces());
        plugged = new Plugged(wiring, state);
        partShare = wiring.adapter().parts().tolerancePercent() / 100;
    }

    List<MeterStep> steps(MeterStep.Phase phase) {
        if (phase == MeterStep.Phase.UNPLUGGED) {
            bench.layout().pieces().forEach(this::route);
            contacts.stream().filter(Contact::isSupply).forEach(this::railStandsAlone);
            for (Plug plug : Plug.values()) {
                neighbours(plug);
            }
        } else {
            contacts.forEach(this::voltage);
        }
        return List.copyOf(steps.values());
    }

    private void route(Piece piece) {
        if (piece.part().equals("upper")) {
            ohms(piece.from(), end(piece.route()));
        } else if (piece.part().equals("lower")) {
            ohms(end(piece.route()), piece.to());
        } else if (!piece.part().equals("lead")) {
            ohms(piece.from(), piece.to());
        }
    }

    private String end(String route) {
        return Plug.SYNTH.pin(wiring.adapter().routes().get(route).synthPin());
    }

    private void railStandsAlone(Contact rail) {
        for (Contact other : contacts) {
            boolean matters = other.isGround() || other.isSupply() || other.isSignal() || other.isControl();
            if (matters) {
                netsApart(rail.point(), other.point());
            }
        }
    }

    private void neighbours(Plug plug) {
        List<String> labels = List.copyOf(plug.connector(wiring).pins().keySet());
        for (int i = 1; i < labels.size(); i++) {
            netsApart(plug.pin(labels.get(i - 1)), plug.pin(labels.get(i)));
        }
    }

    /** Two nets are measured against each other once, wherever their pins are. */
    private void netsApart(String one, String other) {
        int net = nets.of(one);
        int otherNet = nets.of(other);
        if (steps.size() < MeterPlan.MAX_STEPS && net != otherNet && apart.add(Set.of(net, otherNet))) {
            ohms(one, other);
        }
    }

    private void ohms(String from, String to) {
        double ohms = bench.ohms(from, to);
        if (steps.containsKey(id("ohms", to, from))) {
            return;
        }
        String probes = "Meter on ohms, red on " + from + ", black on " + to + ": ";
        if (Double.isInfinite(ohms)) {
            add("ohms", MeterStep.Kind.ISOLATION, from, to, null, MeterPlan.OPEN_OHMS, null, probes + "no connection.");
        } else if (ohms == 0) {
            add(
                    "ohms",
                    MeterStep.Kind.CONTINUITY,
                    from,
                    to,
                    0.0,
                    0.0,
                    MeterPlan.WIRE_OHMS,
                    probes + "a connection, below " + Figures.ohms(MeterPlan.WIRE_OHMS) + ".");
        } else {
            double min = ohms * (1 - partShare - METER_SHARE);
            double max = ohms * (1 + partShare + METER_SHARE) + MeterPlan.WIRE_OHMS;
            String range = Figures.ohms(Figures.rounded(ohms)) + " (" + Figures.ohms(Figures.rounded(min)) + " to "
                    + Figures.ohms(Figures.rounded(max)) + ").";
            add("ohms", MeterStep.Kind.RESISTANCE, from, to, ohms, min, max, probes + range);
        }
    }

    private void voltage(Contact contact) {
        boolean routed = !plugged.routesAt(contact).isEmpty();
        boolean rail = contact.isSynths() && contact.isSupply();
        boolean unknown = contact.role() instanceof PinRole.Unknown;
        if (!rail && !routed || unknown || contact.isGround() || contact.isSynths() && contact.isSignal()) {
            return;
        }
        double volts = bench.volts(contact.point());
        double min = volts - QUIET_VOLTS;
        double max = volts + QUIET_VOLTS;
        if (Math.abs(volts) > QUIET_VOLTS) {
            WorstCase worst = plugged.worstCase(contact);
            min = Math.min(volts, Double.isNaN(worst.minVolts()) ? volts : worst.minVolts())
                    - METER_SHARE * Math.abs(volts);
            max = Math.max(volts, Double.isNaN(worst.maxVolts()) ? volts : worst.maxVolts())
                    + METER_SHARE * Math.abs(volts);
        }
        String sentence = "Meter on V DC, red on " + contact.point() + ", black on ground: "
                + Figures.volts(Figures.rounded(volts)) + " (" + Figures.volts(Figures.rounded(min)) + " to "
                + Figures.volts(Figures.rounded(max)) + ").";
        add("volts", MeterStep.Kind.VOLTAGE, contact.point(), "ground", volts, min, max, sentence);
    }

    private void add(
            String word,
            MeterStep.Kind kind,
            String from,
            String to,
            Double expected,
            Double min,
            Double max,
            String instruction) {
        var phase = kind == MeterStep.Kind.VOLTAGE ? MeterStep.Phase.POWERED : MeterStep.Phase.UNPLUGGED;
        String id = id(word, from, to);
        String sentence = switches.isEmpty() ? instruction : "With " + switches + ". " + instruction;
        steps.putIfAbsent(id, new MeterStep(id, 0, phase, kind, switches, from, to, expected, min, max, sentence));
    }

    private String id(String word, String from, String to) {
        String id = word + " " + from + " > " + to;
        return switches.isEmpty() ? id : id + " #" + Integer.toHexString(switches.hashCode());
    }
}
