package rosinbook.circuit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A SPICE netlist of a wiring, plugged in at both ends and powered; runs unchanged in ngspice.
 *
 * <p>Nets are numbered, 0 is ground; comments say which pins are where. Wires have no element of their own. Rails are ideal
 * sources. A pickup, where known, is a source of 1 V AC behind its capacitance; a preamp is a coupling capacitor, its
 * input resistance and an ideal gain. What would make a simulator stop, a rail joined to ground or to another rail, is
 * written as a comment.
 */
public final class Netlist {
    private static final double USUAL_PREAMP_OHMS = 10e6;
    private static final double LEAK_OHMS = 1e12;

    private final Plugged plugged;
    private final Map<Integer, Integer> nodes = new LinkedHashMap<>();
    private final Map<Integer, String> heldBy = new TreeMap<>();
    private final StringBuilder text = new StringBuilder();
    private int parts;

    private Netlist(Plugged plugged) {
        this.plugged = plugged;
        nodes.put(plugged.nets.of(plugged.layout.ground()), 0);
        heldBy.put(0, "ground");
    }

    /**
     * The netlist with every switch in its first position.
     *
     * @return ASCII lines that end with {@code .end}
     */
    public static String of(Wiring wiring) {
        return new Netlist(new Plugged(wiring, SwitchStates.of(wiring.adapter()).get(0))).write();
    }

    /** Number of the node a pin is on, as the netlist names it. */
    static int node(Wiring wiring, Plug plug, String label) {
        var netlist = new Netlist(
                new Plugged(wiring, SwitchStates.of(wiring.adapter()).get(0)));
        netlist.write();
        return netlist.node(plug.pin(label));
    }

    private String write() {
        line("* Adapter between instrument and synth");
        String switches = SwitchStates.describe(plugged.positions);
        if (!switches.isEmpty()) {
            comment(switches);
        }
        for (Contact contact : plugged.contacts) {
            comment("node " + node(contact.point()) + ": " + contact.describe());
        }
        rails();
        plugged.layout.pieces().forEach(this::resistor);
        Insides.of(plugged.wiring, plugged.layout.ground()).forEach(this::resistor);
        plugged.layout.amps().forEach(this::amp);
        boolean sounding = pickups();
        leaks();
        line(".op");
        if (sounding) {
            line(".ac dec 20 20 20k");
            plugged.contacts.stream()
                    .filter(contact -> contact.isSynths() && contact.isSignal() && !plugged.isGrounded(contact))
                    .forEach(contact -> line(".print ac vdb(" + node(contact.point()) + ")"));
        }
        line(".end");
        return text.toString();
    }

    private void rails() {
        for (Contact contact : plugged.contacts) {
            if (contact.isSynths() && contact.role() instanceof PinRole.Supply supply) {
                source("V" + ++parts, contact.point(), supply.volts(), contact.point());
                for (Contact other : plugged.joinedWith(contact)) {
                    boolean takes = !other.isSynths()
                            && other.role() instanceof PinRole.Supply taken
                            && taken.maxMilliamps() != null;
                    if (takes) {
                        sink(contact, ((PinRole.Supply) other.role()).maxMilliamps(), other.point());
                    }
                }
            }
        }
    }

    private void source(String name, String point, double volts, String what) {
        int node = node(point);
        String element = name + " " + node + " 0 DC " + number(volts);
        String holder = heldBy.putIfAbsent(node, what);
        line(holder == null ? element : "* left out, because it is joined to " + plain(holder) + ": " + element);
    }

    private void sink(Contact rail, double milliamps, String what) {
        boolean positive = ((PinRole.Supply) rail.role()).volts() > 0;
        String ends = positive ? node(rail.point()) + " 0" : "0 " + node(rail.point());
        comment("taken by " + what);
        line("I" + ++parts + " " + ends + " DC " + number(milliamps / 1000));
    }

    private void resistor(Piece piece) {
        int from = node(piece.from());
        int to = node(piece.to());
        if (!piece.isWire() && from != to) {
            comment(piece.route().isEmpty() ? "inside: " + piece.part() : piece.route() + " " + piece.part());
            line("R" + ++parts + " " + from + " " + to + " " + number(piece.ohms()));
        }
    }

    private void amp(Amp amp) {
        int in = node(amp.from());
        int out = node(amp.to());
        int middle = nodes.size();
        nodes.put(-middle - 1, middle);
        double ohms = amp.preamp().inputOhms() == null
                ? USUAL_PREAMP_OHMS
                : amp.preamp().inputOhms();
        double gain = Math.pow(10, amp.preamp().gainDecibels() / 20);
        comment(amp.route() + " preamp");
        line("C" + ++parts + " " + in + " " + middle + " 1u");
        line("R" + ++parts + " " + middle + " 0 " + number(ohms));
        String element = "E" + ++parts + " " + out + " 0 " + middle + " 0 " + number(gain);
        String holder = heldBy.putIfAbsent(out, amp.route());
        line(holder == null ? element : "* left out, because it is joined to " + plain(holder) + ": " + element);
        for (Contact rail : plugged.contacts) {
            boolean feeds = rail.isSynths()
                    && rail.isSupply()
                    && (rail.label().equals(amp.preamp().supplyPin())
                            || rail.label().equals(amp.preamp().negativeSupplyPin()));
            if (feeds && amp.preamp().supplyMilliamps() > 0) {
                sink(rail, amp.preamp().supplyMilliamps(), amp.route());
            }
        }
    }

    private boolean pickups() {
        Pickup pickup = plugged.wiring.instrument().pickup();
        List<Contact> strings = plugged.contacts.stream()
                .filter(contact -> !contact.isSynths() && contact.role() instanceof PinRole.StringSignal)
                .toList();
        if (pickup == null) {
            comment("pickup not known: no signal sources");
            return false;
        }
        for (Contact string : strings) {
            int middle = nodes.size();
            nodes.put(-middle - 1, middle);
            comment(string.describe() + " pickup");
            line("V" + ++parts + " " + middle + " 0 DC 0 AC 1");
            line("C" + ++parts + " " + middle + " " + node(string.point()) + " "
                    + number(pickup.sourcePicofarads() * 1e-12));
            if (pickup.cableMetres() > 0) {
                line("C" + ++parts + " " + node(string.point()) + " 0 "
                        + number(pickup.cableMetres() * pickup.cablePicofaradsPerMetre() * 1e-12));
            }
        }
        return !strings.isEmpty();
    }

    /** A path to ground for every node that has none, because simulators ask for one. */
    private void leaks() {
        comment("paths to ground for what is left open");
        Map<Integer, Integer> copy = new LinkedHashMap<>(nodes);
        copy.forEach((net, node) -> {
            if (net >= 0 && node > 0) {
                line("R" + ++parts + " " + node + " 0 " + number(LEAK_OHMS));
            }
        });
    }

    private int node(String point) {
        return nodes.computeIfAbsent(plugged.nets.of(point), unseen -> nodes.size());
    }

    private void comment(String words) {
        line("* " + plain(words));
    }

    private void line(String line) {
        text.append(line).append('\n');
    }

    private static String plain(String words) {
        return words.replace("\u2212", "-").replace("Ω", "ohm").replaceAll("[^ -~]", "?");
    }

    private static String number(double number) {
        return new BigDecimal(number)
                .round(new MathContext(12, RoundingMode.HALF_EVEN))
                .stripTrailingZeros()
                .toString();
    }
}
