package rosinbook.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * One thing that can go wrong while soldering.
 *
 * @param sentence what it would be, in words
 * @param change what it does to the pieces
 */
record Fault(String sentence, UnaryOperator<List<Piece>> change) {
    static final Fault NONE = new Fault("nothing", pieces -> pieces);

    List<Piece> applied(List<Piece> pieces) {
        return change.apply(pieces);
    }

    /** Every single fault of an adapter: each joint open, each resistor bridged, swapped or ten times off, each two pins of a connector bridged. */
    static List<Fault> singles(Wiring wiring, List<Piece> pieces) {
        List<Fault> faults = new ArrayList<>();
        for (Piece piece : pieces) {
            faults.add(open(piece));
            if (!piece.isWire()) {
                faults.add(bridged(piece));
                faults.add(timesTen(piece, 10));
                faults.add(timesTen(piece, 0.1));
            }
            if (piece.part().equals("upper")) {
                faults.add(swapped(piece.route()));
            }
        }
        for (Plug plug : Plug.values()) {
            List<String> labels = List.copyOf(plug.connector(wiring).pins().keySet());
            for (int i = 0; i < labels.size(); i++) {
                for (String other : labels.subList(i + 1, labels.size())) {
                    faults.add(bridge(plug.pin(labels.get(i)), plug.pin(other)));
                }
            }
        }
        return faults;
    }

    private static Fault open(Piece piece) {
        String part = piece.isWire() ? "joint" : piece.part() + " resistor (" + Figures.ohms(piece.ohms()) + ")";
        return new Fault(
                "open " + part + " in route " + piece.route() + ", between " + piece.from() + " and " + piece.to(),
                pieces -> pieces.stream().filter(other -> !other.equals(piece)).toList());
    }

    private static Fault bridged(Piece piece) {
        return new Fault(
                "a bridge of solder across the " + piece.part() + " resistor of route " + piece.route(),
                pieces -> replaced(pieces, Map.of(piece, piece.withOhms(0))));
    }

    private static Fault timesTen(Piece piece, double factor) {
        double ohms = piece.ohms() * factor;
        return new Fault(
                Figures.ohms(ohms) + " in place of " + Figures.ohms(piece.ohms()) + " as the " + piece.part()
                        + " resistor of route " + piece.route() + " (multiplier ring misread)",
                pieces -> replaced(pieces, Map.of(piece, piece.withOhms(ohms))));
    }

    private static Fault swapped(String route) {
        return new Fault("upper and lower resistor of route " + route + " swapped", pieces -> {
            Piece upper = find(pieces, route, "upper");
            Piece lower = find(pieces, route, "lower");
            return replaced(pieces, Map.of(upper, upper.withOhms(lower.ohms()), lower, lower.withOhms(upper.ohms())));
        });
    }

    private static Fault bridge(String one, String other) {
        return new Fault("a bridge of solder between " + one + " and " + other, pieces -> {
            List<Piece> more = new ArrayList<>(pieces);
            more.add(new Piece("", "bridge", one, other, 0));
            return more;
        });
    }

    private static Piece find(List<Piece> pieces, String route, String part) {
        return pieces.stream()
                .filter(piece -> piece.route().equals(route) && piece.part().equals(part))
                .findFirst()
                .orElseThrow();
    }

    private static List<Piece> replaced(List<Piece> pieces, Map<Piece, Piece> changes) {
        return pieces.stream().map(piece -> changes.getOrDefault(piece, piece)).toList();
    }
}
