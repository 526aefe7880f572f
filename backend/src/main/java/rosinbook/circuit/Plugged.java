package rosinbook.circuit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A wiring plugged in at both ends and powered, for one setting of its switches: who is joined with whom, at which volts. */
final class Plugged {
    final Wiring wiring;
    final Map<String, String> positions;
    final Layout layout;
    final List<Contact> contacts;
    final Nets nets;
    final Circuit circuit;
    private final List<Piece> pieces;
    private final Map<Contact, Set<Contact>> reached = new HashMap<>();
    private final Map<Integer, WorstCase> worstCases = new HashMap<>();
    private final Map<Integer, List<Contact>> byNet = new LinkedHashMap<>();

    Plugged(Wiring wiring, Map<String, String> positions) {
        this.wiring = wiring;
        this.positions = positions;
        layout = Layout.of(wiring, positions);
        contacts = Contact.of(wiring);
        pieces = new ArrayList<>(layout.pieces());
        pieces.addAll(Insides.of(wiring, layout.ground()));
        List<String> points =
                new ArrayList<>(contacts.stream().map(Contact::point).toList());
        layout.amps().forEach(amp -> points.addAll(List.of(amp.from(), amp.to())));
        points.add(layout.ground());
        nets = new Nets(points, pieces);
        circuit = new Circuit(nets, pieces, Insides.heldVolts(wiring, layout));
        contacts.forEach(contact -> byNet.computeIfAbsent(nets.of(contact.point()), unseen -> new ArrayList<>())
                .add(contact));
    }

    /** Pins that wires join, net by net. */
    Map<Integer, List<Contact>> byNet() {
        return byNet;
    }

    List<Contact> joinedWith(Contact contact) {
        return byNet.get(nets.of(contact.point()));
    }

    double volts(Contact contact) {
        return circuit.volts(contact.point());
    }

    boolean isGrounded(Contact contact) {
        return nets.of(contact.point()) == nets.of(layout.ground());
    }

    WorstCase worstCase(Contact contact) {
        return worstCases.computeIfAbsent(nets.of(contact.point()), unseen -> findWorstCase(contact));
    }

    private WorstCase findWorstCase(Contact contact) {
        Map<String, Double> rails = new LinkedHashMap<>();
        for (Contact rail : contacts) {
            if (rail.isSynths() && rail.role() instanceof PinRole.Supply supply) {
                rails.put(rail.point(), Insides.railShare(supply));
            }
        }
        return circuit.worstCase(contact.point(), wiring.adapter().parts().tolerancePercent() / 100, rails);
    }

    /** Routes with a piece or a preamp on the contact's net. */
    List<String> routesAt(Contact... touched) {
        Set<Integer> wanted = new HashSet<>();
        for (Contact contact : touched) {
            wanted.add(nets.of(contact.point()));
        }
        Set<String> routes = new LinkedHashSet<>();
        for (Piece piece : layout.pieces()) {
            if (wanted.contains(nets.of(piece.from())) || wanted.contains(nets.of(piece.to()))) {
                routes.add(piece.route());
            }
        }
        for (Amp amp : layout.amps()) {
            if (wanted.contains(nets.of(amp.from())) || wanted.contains(nets.of(amp.to()))) {
                routes.add(amp.route());
            }
        }
        return List.copyOf(routes);
    }

    /** The routes whose wires lead from one point to another of the same net, the shortest way. */
    List<String> routesBetween(String from, String to) {
        Map<String, List<String>> ways = new LinkedHashMap<>(Map.of(from, List.of()));
        List<String> open = new ArrayList<>(List.of(from));
        for (int i = 0; i < open.size() && !ways.containsKey(to); i++) {
            String here = open.get(i);
            for (Piece piece : pieces) {
                boolean leads = piece.isWire()
                        && (piece.from().equals(here) || piece.to().equals(here));
                String there = piece.from().equals(here) ? piece.to() : piece.from();
                if (leads && !ways.containsKey(there)) {
                    ways.put(there, longer(ways.get(here), piece.route()));
                    open.add(there);
                }
            }
        }
        return ways.getOrDefault(to, List.of());
    }

    private static List<String> longer(List<String> way, String route) {
        if (route.isEmpty() || way.contains(route)) {
            return way;
        }
        List<String> longer = new ArrayList<>(way);
        longer.add(route);
        return longer;
    }

    /**
     * The synth's pins that an instrument pin's signal reaches through its own routes' wires, resistors and preamps; never
     * through ground or a rail, and never on through another pin.
     */
    Set<Contact> reachedFrom(Contact source) {
        return reached.computeIfAbsent(source, this::findReached);
    }

    private Set<Contact> findReached(Contact source) {
        Set<Integer> seen = new HashSet<>();
        List<Integer> open = new ArrayList<>(List.of(nets.of(source.point())));
        Set<Contact> ends = new LinkedHashSet<>();
        while (!open.isEmpty()) {
            int net = open.remove(open.size() - 1);
            if (!seen.add(net) || isHeld(net)) {
                continue;
            }
            List<Contact> here = byNet.getOrDefault(net, List.of());
            here.stream().filter(Contact::isSynths).forEach(ends::add);
            if (net == nets.of(source.point()) || here.isEmpty()) {
                spread(source, net, open);
            }
        }
        return ends;
    }

    private void spread(Contact source, int net, List<Integer> open) {
        for (Piece piece : layout.pieces()) {
            if (!isRouteOf(source, piece.route())) {
                continue;
            }
            if (nets.of(piece.from()) == net) {
                open.add(nets.of(piece.to()));
            } else if (nets.of(piece.to()) == net) {
                open.add(nets.of(piece.from()));
            }
        }
        for (Amp amp : layout.amps()) {
            if (isRouteOf(source, amp.route()) && nets.of(amp.from()) == net) {
                open.add(nets.of(amp.to()));
            }
        }
    }

    private boolean isRouteOf(Contact source, String id) {
        return source.label().equals(wiring.adapter().routes().get(id).instrumentPin());
    }

    private boolean isHeld(int net) {
        return net == nets.of(layout.ground())
                || byNet.getOrDefault(net, List.of()).stream().anyMatch(c -> c.isSupply() || c.isGround());
    }
}
