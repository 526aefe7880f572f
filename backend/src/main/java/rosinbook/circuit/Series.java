package rosinbook.circuit;

/**
 * A series of preferred values.
 *
 * <p>The tables are written out, because no formula gives them: 27 to 47 and 82 of E24 and 920 of E192 differ from the
 * rounded powers of ten.
 *
 * @see "IEC 60063, Preferred number series for resistors and capacitors"
 */
public enum Series {
    E6(Table.E24, 4),
    E12(Table.E24, 2),
    E24(Table.E24, 1),
    E48(Table.E192, 4),
    E96(Table.E192, 2),
    E192(Table.E192, 1);

    /** The smallest resistor that is ever chosen, Ω: five decades start here. */
    public static final double SMALLEST_OHMS = 10;

    private static final int DECADES = 5;
    private final int[] hundreds;
    private final double[] ohms;

    Series(int[] table, int step) {
        hundreds = new int[table.length / step];
        ohms = new double[hundreds.length * DECADES];
        for (int i = 0; i < hundreds.length; i++) {
            hundreds[i] = table[i * step];
            for (int decade = 0; decade < DECADES; decade++) {
                ohms[decade * hundreds.length + i] = scaled(hundreds[i], decade - 1);
            }
        }
    }

    /** One decade as whole numbers from 100 to 999, rising. */
    public int[] decade() {
        return hundreds.clone();
    }

    /** All values of five decades, from 10 Ω to just below 1 MΩ, rising. */
    public double[] ohms() {
        return ohms.clone();
    }

    /**
     * The preferred value closest to a resistance on a linear scale; at the midpoint the smaller one. Not limited to five
     * decades.
     *
     * @param wantedOhms Ω, 1e-3 to 1e12
     * @throws IllegalArgumentException starting with {@code wantedOhms} when it is outside that
     */
    public double nearest(double wantedOhms) {
        Require.within("wantedOhms", wantedOhms, 1e-3, 1e12, "ohms");
        int exponent = (int) Math.floor(Math.log10(wantedOhms)) - 2;
        double best = scaled(hundreds[0], exponent + 1);
        for (int shift = 0; shift >= -1; shift--) {
            for (int i = hundreds.length - 1; i >= 0; i--) {
                double candidate = scaled(hundreds[i], exponent + shift);
                if (Math.abs(candidate - wantedOhms) <= Math.abs(best - wantedOhms)) {
                    best = candidate;
                }
            }
        }
        return best;
    }

    /** Divides for negative powers, so that 101 with -1 is exactly the double written 10.1. */
    private static double scaled(int hundreds, int powerOfTen) {
        return powerOfTen < 0 ? hundreds / Math.pow(10, -powerOfTen) : hundreds * Math.pow(10, powerOfTen);
    }

    private static final class Table {
        static final int[] E24 = {
            100, 110, 120, 130, 150, 160, 180, 200, 220, 240, 270, 300, 330, 360, 390, 430, 470, 510, 560, 620, 680,
            750, 820, 910
        };
        static final int[] E192 = {
            100, 101, 102, 104, 105, 106, 107, 109, 110, 111, 113, 114, 115, 117, 118, 120,
            121, 123, 124, 126, 127, 129, 130, 132, 133, 135, 137, 138, 140, 142, 143, 145,
            147, 149, 150, 152, 154, 156, 158, 160, 162, 164, 165, 167, 169, 172, 174, 176,
            178, 180, 182, 184, 187, 189, 191, 193, 196, 198, 200, 203, 205, 208, 210, 213,
            215, 218, 221, 223, 226, 229, 232, 234, 237, 240, 243, 246, 249, 252, 255, 258,
            261, 264, 267, 271, 274, 277, 280, 284, 287, 291, 294, 298, 301, 305, 309, 312,
            316, 320, 324, 328, 332, 336, 340, 344, 348, 352, 357, 361, 365, 370, 374, 379,
            383, 388, 392, 397, 402, 407, 412, 417, 422, 427, 432, 437, 442, 448, 453, 459,
            464, 470, 475, 481, 487, 493, 499, 505, 511, 517, 523, 530, 536, 542, 549, 556,
            562, 569, 576, 583, 590, 597, 604, 612, 619, 626, 634, 642, 649, 657, 665, 673,
            681, 690, 698, 706, 715, 723, 732, 741, 750, 759, 768, 777, 787, 796, 806, 816,
            825, 835, 845, 856, 866, 876, 887, 898, 909, 920, 931, 942, 953, 965, 976, 988
        };
    }
}
