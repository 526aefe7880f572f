package rosinbook.circuit;

import java.util.ArrayList;
import java.util.List;

/** The parts an adapter is built from, for a shopping list. */
public final class PartsList {
    private static final String HEADER =
            "reference,route,part,value,tolerance percent,rating milliwatts,coloured rings";

    private PartsList() {}

    /**
     * One part.
     *
     * @param reference R1, R2 … for resistors, A1 … for preamps, S1 … for switches; the two plugs are P1 and P2
     * @param route id of its route; empty for plugs
     * @param part upper, lower, resistor, tie, preamp, switch or plug
     * @param value in words
     * @param rings of a resistor; empty for other parts
     */
    public record Part(String reference, String route, String part, String value, List<String> rings) {
        /** Copies the list. */
        public Part {
            rings = List.copyOf(rings);
        }
    }

    /** Every part once, in the order of the routes, all positions of switches included. */
    public static List<Part> of(Wiring wiring) {
        List<Part> parts = new ArrayList<>();
        parts.add(plug("P1", "for the instrument", wiring.instrument().connector()));
        parts.add(plug("P2", "for the synth", wiring.synth().connector()));
        double tolerance = wiring.adapter().parts().tolerancePercent();
        wiring.adapter().routes().forEach((id, route) -> {
            if (route.via() instanceof Via.Switch choice) {
                parts.add(new Part(next(parts, "S"), id, "switch", choice.describe(), List.of()));
            }
            for (Via via : PlainRules.ways(route.via())) {
                add(parts, id, via, tolerance);
            }
        });
        return List.copyOf(parts);
    }

    /**
     * The list as CSV after RFC 4180, with a header line. A cell that a spreadsheet would take for a formula is given a
     * leading apostrophe.
     */
    public static String csv(Wiring wiring) {
        var text = new StringBuilder(HEADER).append("\r\n");
        Parts chosen = wiring.adapter().parts();
        for (Part part : of(wiring)) {
            boolean resistor = !part.rings().isEmpty();
            List<String> cells = List.of(
                    part.reference(),
                    part.route(),
                    part.part(),
                    part.value(),
                    resistor ? Figures.plain(chosen.tolerancePercent()) : "",
                    resistor ? Figures.plain(chosen.ratingMilliwatts()) : "",
                    String.join(" ", part.rings()));
            text.append(String.join(",", cells.stream().map(PartsList::cell).toList()))
                    .append("\r\n");
        }
        return text.toString();
    }

    private static void add(List<Part> parts, String id, Via via, double tolerance) {
        if (via instanceof Via.Resistor resistor) {
            parts.add(resistor(parts, id, "resistor", resistor.ohms(), tolerance));
        } else if (via instanceof Via.Divider divider) {
            parts.add(resistor(parts, id, "upper", divider.upperOhms(), tolerance));
            parts.add(resistor(parts, id, "lower", divider.lowerOhms(), tolerance));
        } else if (via instanceof Via.Tied tied && tied.ohms() > 0) {
            parts.add(resistor(parts, id, "tie", tied.ohms(), tolerance));
        } else if (via instanceof Via.Preamp) {
            parts.add(new Part(next(parts, "A"), id, "preamp", via.describe(), List.of()));
        }
    }

    private static Part resistor(List<Part> parts, String id, String part, double ohms, double tolerance) {
        boolean ringed = ohms >= 0.1 && ohms <= 99.9e9;
        return new Part(
                next(parts, "R"), id, part, Figures.ohms(ohms), ringed ? ColourBands.of(ohms, tolerance) : List.of());
    }

    private static Part plug(String reference, String whose, Connector connector) {
        String shape = connector.shape().isEmpty() ? connector.pins().size() + " pins" : connector.shape();
        return new Part(reference, "", "plug", whose + ", to fit: " + shape, List.of());
    }

    private static String next(List<Part> parts, String letter) {
        return letter
                + (1
                        + parts.stream()
                                .filter(part -> part.reference().startsWith(letter))
                                .count());
    }

    private static String cell(String text) {
        String safe = text.matches("[=+\\-@].*") ? "'" + text : text;
        return safe.matches(".*[\",\r\n].*") ? "\"" + safe.replace("\"", "\"\"") + "\"" : safe;
    }
}
