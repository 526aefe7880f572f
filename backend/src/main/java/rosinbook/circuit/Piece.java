package rosinbook.circuit;

/**
 * One part with two ends: a wire or a resistor.
 *
 * @param route the route it belongs to; empty for what is inside the instrument or the synth
 * @param part what it is within its route: wire, resistor, upper, lower, lead, tie, load
 * @param from one end
 * @param to the other end
 * @param ohms Ω, 0 for a wire
 */
record Piece(String route, String part, String from, String to, double ohms) {
    boolean isWire() {
        return ohms == 0;
    }

    Piece withOhms(double other) {
        return new Piece(route, part, from, to, other);
    }
}
