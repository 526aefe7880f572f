package rosinbook.circuit;

import java.util.Arrays;

/**
 * Lowest and highest voltage of one net when every resistor and every rail may be off by its tolerance.
 *
 * <p>With all others fixed, the voltage is a monotone function of each single resistor and rail, so both extremes lie where
 * every one of them stands at an end of its tolerance. They are found by moving one after the other to the better end
 * until none helps.
 *
 * @param minVolts V; NaN when nothing holds the net
 * @param maxVolts V
 */
record WorstCase(double minVolts, double maxVolts) {
    static WorstCase at(
            int net, int[] from, int[] to, double[] ohms, double[] partShares, double[] held, double[] heldShares) {
        boolean[] near = near(net, from, to, held);
        int[] kept = new int[ohms.length];
        int count = 0;
        for (int i = 0; i < ohms.length; i++) {
            if (near[from[i]] && near[to[i]] && (Double.isNaN(held[from[i]]) || Double.isNaN(held[to[i]]))) {
                kept[count++] = i;
            }
        }
        int[] parts = Arrays.copyOf(kept, count);
        int[] subFrom = Arrays.stream(parts).map(i -> from[i]).toArray();
        int[] subTo = Arrays.stream(parts).map(i -> to[i]).toArray();
        double[] subOhms = Arrays.stream(parts).mapToDouble(i -> ohms[i]).toArray();
        double[] subShares =
                Arrays.stream(parts).mapToDouble(i -> partShares[i]).toArray();
        double[] heldNear = held.clone();
        double[] sharesNear = heldShares.clone();
        for (int i = 0; i < held.length; i++) {
            if (!near[i]) {
                heldNear[i] = Double.NaN;
                sharesNear[i] = 0;
            }
        }
        var search = new Search(net, subFrom, subTo, subOhms, subShares, heldNear, sharesNear);
        return new WorstCase(search.extreme(-1), search.extreme(1));
    }

    /** The nets whose voltage or resistance can matter to this one: everything up to the next held nets. */
    private static boolean[] near(int net, int[] from, int[] to, double[] held) {
        boolean[] near = new boolean[held.length];
        near[net] = true;
        boolean grew = true;
        while (grew) {
            grew = false;
            for (int i = 0; i < from.length; i++) {
                boolean onward = near[from[i]] && Double.isNaN(held[from[i]]) && !near[to[i]];
                boolean back = near[to[i]] && Double.isNaN(held[to[i]]) && !near[from[i]];
                if (onward || back) {
                    near[from[i]] = true;
                    near[to[i]] = true;
                    grew = true;
                }
            }
        }
        return near;
    }

    private record Search(
            int net, int[] from, int[] to, double[] ohms, double[] partShares, double[] held, double[] heldShares) {
        double extreme(int direction) {
            double[] movedOhms = ohms.clone();
            double[] movedHeld = held.clone();
            double best = volts(movedOhms, movedHeld) * direction;
            boolean better = true;
            while (better) {
                double before = best;
                best = move(movedOhms, ohms, partShares, movedOhms, movedHeld, direction, best);
                best = move(movedHeld, held, heldShares, movedOhms, movedHeld, direction, best);
                better = best > before + 1e-12;
            }
            return best * direction;
        }

        private double move(
                double[] moved,
                double[] nominal,
                double[] shares,
                double[] movedOhms,
                double[] movedHeld,
                int direction,
                double start) {
            double best = start;
            for (int i = 0; i < moved.length; i++) {
                if (shares[i] == 0 || Double.isNaN(nominal[i])) {
                    continue;
                }
                for (int sign = -1; sign <= 1; sign += 2) {
                    double kept = moved[i];
                    moved[i] = nominal[i] * (1 + sign * shares[i]);
                    double found = volts(movedOhms, movedHeld) * direction;
                    if (found > best) {
                        best = found;
                    } else {
                        moved[i] = kept;
                    }
                }
            }
            return best;
        }

        private double volts(double[] theseOhms, double[] theseHeld) {
            return Circuit.solve(from, to, theseOhms, theseHeld)[net];
        }
    }
}
