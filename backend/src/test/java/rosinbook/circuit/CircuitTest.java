package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CircuitTest {
    /** Kuphaldt, Lessons in Electric Circuits I, ch. 6: 45 V over 5 k, 10 k and 7.5 k; 2 mA; drops 10, 20, 15 V. */
    @Test
    void three_resistors_in_series_divide_as_in_the_textbook() {
        List<Piece> pieces = List.of(
                new Piece("r", "1", "top", "a", 5000),
                new Piece("r", "2", "a", "b", 10_000),
                new Piece("r", "3", "b", "ground", 7500));
        var circuit = circuit(pieces, Map.of("top", 45.0, "ground", 0.0));
        assertEquals(35, circuit.volts("a"), 1e-9);
        assertEquals(15, circuit.volts("b"), 1e-9);
        assertEquals(0.002, circuit.ampsOutOf("top"), 1e-12);
        assertEquals(0.04, circuit.watts(pieces.get(1)), 1e-12);
    }

    /** Kuphaldt, same work, network theorems: 28 V behind 4 ohms and 7 V behind 1 ohm across 2 ohms give 8 V. */
    @Test
    void two_sources_across_one_load_give_the_textbooks_eight_volts() {
        var circuit = circuit(
                List.of(
                        new Piece("r", "1", "left", "load", 4),
                        new Piece("r", "2", "right", "load", 1),
                        new Piece("r", "3", "load", "ground", 2)),
                Map.of("left", 28.0, "right", 7.0, "ground", 0.0));
        assertEquals(8, circuit.volts("load"), 1e-9);
        assertEquals(5, circuit.ampsOutOf("left"), 1e-9);
        assertEquals(-1, circuit.ampsOutOf("right"), 1e-9);
    }

    @Test
    void what_nothing_holds_has_no_voltage() {
        var circuit = circuit(
                List.of(new Piece("r", "1", "x", "y", 100), new Piece("r", "2", "a", "ground", 10)),
                Map.of("ground", 0.0));
        assertTrue(Double.isNaN(circuit.volts("x")));
        assertEquals(0, circuit.volts("a"));
    }

    @Test
    void wires_make_one_net_and_a_resistor_across_them_carries_nothing() {
        List<Piece> pieces = List.of(
                new Piece("r", "wire", "a", "b", 0),
                new Piece("r", "across", "a", "b", 100),
                new Piece("r", "up", "b", "top", 1000));
        var circuit = circuit(pieces, Map.of("top", 7.0));
        assertEquals(7, circuit.volts("a"), 1e-12);
        assertEquals(0, circuit.watts(pieces.get(1)));
    }

    private static Circuit circuit(List<Piece> pieces, Map<String, Double> held) {
        return new Circuit(new Nets(held.keySet(), pieces), pieces, held);
    }
}
