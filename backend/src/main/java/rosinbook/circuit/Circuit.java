package rosinbook.circuit;

import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * Resistors between nets, some of which are held at a voltage; steady state only.
 *
 * <p>Kirchhoff's current law at every net that is not held, solved by elimination. A net without a path to a held one has
 * no voltage (NaN).
 *
 * @see "Kuphaldt, Lessons in Electric Circuits I, ch. 10, node voltage method"
 */
final class Circuit {
    private final Nets nets;
    private final List<Piece> resistors;
    private final int[] from;
    private final int[] to;
    private final double[] ohms;
    private final double[] held;
    private final double[] volts;

    /** @param heldVolts V by point; where wires join two of them the first named counts */
    Circuit(Nets nets, List<Piece> pieces, Map<String, Double> heldVolts) {
        this.nets = nets;
        resistors = pieces.stream()
                .filter(piece -> !piece.isWire() && nets.of(piece.from()) != nets.of(piece.to()))
                .toList();
        from = resistors.stream().mapToInt(piece -> nets.of(piece.from())).toArray();
        to = resistors.stream().mapToInt(piece -> nets.of(piece.to())).toArray();
        ohms = resistors.stream().mapToDouble(Piece::ohms).toArray();
        held = new double[nets.size()];
        Arrays.fill(held, Double.NaN);
        heldVolts.forEach((point, value) -> {
            int net = nets.of(point);
            if (net >= 0 && Double.isNaN(held[net])) {
                held[net] = value;
            }
        });
        volts = solve(from, to, ohms, held);
    }

    /** V at a point, NaN when nothing holds it. */
    double volts(String point) {
        int net = nets.of(point);
        return net < 0 ? Double.NaN : volts[net];
    }

    /** A that flow out of a point's net through all resistors on it. */
    double ampsOutOf(String point) {
        int net = nets.of(point);
        double amps = 0;
        for (int i = 0; i < ohms.length; i++) {
            if (from[i] == net) {
                amps += (volts[net] - volts[to[i]]) / ohms[i];
            } else if (to[i] == net) {
                amps += (volts[net] - volts[from[i]]) / ohms[i];
            }
        }
        return amps;
    }

    /** W that a resistor turns into heat; 0 for a wire, a resistor bridged by wires or one nothing flows through. */
    double watts(Piece piece) {
        double drop = volts(piece.from()) - volts(piece.to());
        return piece.isWire() || Double.isNaN(drop) ? 0 : drop * drop / piece.ohms();
    }

    /** Lowest and highest voltage at a point over all tolerances; see {@link WorstCase}. */
    WorstCase worstCase(String point, double partShare, Map<String, Double> heldShares) {
        double[] shares = new double[nets.size()];
        heldShares.forEach((heldPoint, share) -> {
            if (nets.of(heldPoint) >= 0) {
                shares[nets.of(heldPoint)] = share;
            }
        });
        double[] partShares = resistors.stream()
                .mapToDouble(piece -> piece.route().isEmpty() ? 0 : partShare)
                .toArray();
        return WorstCase.at(nets.of(point), from, to, ohms, partShares, held, shares);
    }

    /** Volts of every net. */
    static double[] solve(int[] from, int[] to, double[] ohms, double[] held) {
        double[] volts = held.clone();
        int[] unknown = new int[held.length];
        int count = number(unknown, reached(from, to, held), held);
        double[][] rows = new double[count][count + 1];
        for (int i = 0; i < ohms.length; i++) {
            add(rows, unknown, volts, from[i], to[i], 1 / ohms[i]);
            add(rows, unknown, volts, to[i], from[i], 1 / ohms[i]);
        }
        eliminate(rows);
        for (int net = 0; net < held.length; net++) {
            if (unknown[net] >= 0) {
                volts[net] = rows[unknown[net]][count];
            }
        }
        return volts;
    }

    private static void add(double[][] rows, int[] unknown, double[] held, int net, int other, double siemens) {
        if (unknown[net] < 0) {
            return;
        }
        double[] row = rows[unknown[net]];
        row[unknown[net]] += siemens;
        if (unknown[other] >= 0) {
            row[unknown[other]] -= siemens;
        } else {
            row[rows.length] += siemens * held[other];
        }
    }

    private static int number(int[] unknown, boolean[] reached, double[] held) {
        int count = 0;
        for (int net = 0; net < held.length; net++) {
            unknown[net] = reached[net] && Double.isNaN(held[net]) ? count++ : -1;
        }
        return count;
    }

    private static boolean[] reached(int[] from, int[] to, double[] held) {
        boolean[] reached = new boolean[held.length];
        for (int net = 0; net < held.length; net++) {
            reached[net] = !Double.isNaN(held[net]);
        }
        boolean grew = true;
        while (grew) {
            grew = false;
            for (int i = 0; i < from.length; i++) {
                if (reached[from[i]] != reached[to[i]]) {
                    reached[from[i]] = true;
                    reached[to[i]] = true;
                    grew = true;
                }
            }
        }
        return reached;
    }

    /** Leaves the solution in the last column; the matrix is symmetric and diagonally dominant, so it needs no pivoting. */
    private static void eliminate(double[][] rows) {
        int count = rows.length;
        for (int pivot = 0; pivot < count; pivot++) {
            for (int column = count; column >= pivot; column--) {
                rows[pivot][column] /= rows[pivot][pivot];
            }
            for (int row = 0; row < count; row++) {
                double factor = rows[row][pivot];
                if (row != pivot && factor != 0) {
                    for (int column = pivot; column <= count; column++) {
                        rows[row][column] -= factor * rows[pivot][column];
                    }
                }
            }
        }
    }
}
