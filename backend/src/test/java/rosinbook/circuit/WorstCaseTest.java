package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class WorstCaseTest {
    /** Against every corner of the tolerances, each solved whole. */
    @Test
    void extremes_are_those_of_all_corners() {
        Random random = new Random(5);
        for (int round = 0; round < 60; round++) {
            List<Piece> pieces = new ArrayList<>();
            String[] ends = {"plus", "minus", "ground", "a", "b"};
            pieces.add(new Piece("r", "x", "plus", "a", ohms(random)));
            pieces.add(new Piece("r", "y", "a", "ground", ohms(random)));
            for (int i = 0; i < 3; i++) {
                String from = ends[random.nextInt(ends.length)];
                String to = ends[random.nextInt(ends.length)];
                if (!from.equals(to)) {
                    pieces.add(new Piece("r", "z" + i, from, to, ohms(random)));
                }
            }
            Map<String, Double> held = Map.of("plus", 7.0, "minus", -7.0, "ground", 0.0);
            Nets nets = new Nets(List.of(ends), pieces);
            WorstCase found = new Circuit(nets, pieces, held).worstCase("a", 0.05, Map.of("plus", 0.1, "minus", 0.1));
            double min = Double.POSITIVE_INFINITY;
            double max = Double.NEGATIVE_INFINITY;
            for (int corner = 0; corner < 1 << (pieces.size() + 2); corner++) {
                double volts = corner(corner, pieces, nets);
                min = Math.min(min, volts);
                max = Math.max(max, volts);
            }
            assertEquals(min, found.minVolts(), 1e-9);
            assertEquals(max, found.maxVolts(), 1e-9);
        }
    }

    private static double corner(int corner, List<Piece> pieces, Nets nets) {
        List<Piece> moved = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            double share = (corner >> i & 1) == 0 ? 0.95 : 1.05;
            moved.add(pieces.get(i).withOhms(pieces.get(i).ohms() * share));
        }
        Map<String, Double> held = new LinkedHashMap<>();
        held.put("plus", (corner >> pieces.size() & 1) == 0 ? 6.3 : 7.7);
        held.put("minus", (corner >> (pieces.size() + 1) & 1) == 0 ? -6.3 : -7.7);
        held.put("ground", 0.0);
        return new Circuit(nets, moved, held).volts("a");
    }

    private static double ohms(Random random) {
        return Math.pow(10, 2 + 3 * random.nextDouble());
    }
}
