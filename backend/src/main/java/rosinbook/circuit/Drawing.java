package rosinbook.circuit;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * One picture of both connectors and all routes, 400 wide: legible on a phone and on paper. Shapes, words and lines carry
 * every meaning; colour only repeats it.
 */
public final class Drawing {
    private static final double WIDTH = 400;
    private static final double FACES_TOP = 44;

    private Drawing() {}

    /**
     * Draws a wiring.
     *
     * @param side from which both connectors are seen; written large
     * @param findings of the same wiring's check, to mark unsafe routes
     * @return SVG 1.1 without script or style element, every player's text escaped
     */
    public static String of(Wiring wiring, Side side, List<Finding> findings) {
        var svg = new Svg();
        boolean mating = side == Side.MATING;
        svg.words(WIDTH / 2, 26, 22, "font-weight='bold'", mating ? "MATING SIDE" : "SOLDER SIDE");
        svg.words(
                WIDTH / 2,
                41,
                Svg.USUAL_SIZE,
                "",
                mating
                        ? "looking at the face that meets the other plug"
                        : "looking at the face where wires are soldered");
        Face.draw(svg, Plug.INSTRUMENT, wiring.instrument().connector(), 0, FACES_TOP, side);
        Face.draw(svg, Plug.SYNTH, wiring.synth().connector(), Face.WIDTH, FACES_TOP, side);
        double y = FACES_TOP + Face.HEIGHT;
        svg.words(10, y, 11, "text-anchor='start' font-weight='bold'", "from instrument pin");
        svg.words(390, y, 11, "text-anchor='end' font-weight='bold'", "to synth pin");
        Set<String> unsafe = new HashSet<>();
        findings.stream()
                .filter(finding -> finding.severity() == Severity.UNSAFE)
                .forEach(finding -> unsafe.addAll(finding.routes()));
        y += 8;
        var rules = new StringBuilder();
        for (Map.Entry<String, Route> entry : wiring.adapter().routes().entrySet()) {
            RouteRow.draw(svg, wiring, entry.getKey(), entry.getValue(), y, unsafe.contains(entry.getKey()));
            y += RouteRow.height(entry.getValue());
            rules.append("M10 ").append(Figures.plain(y - 1)).append(" H390 ");
        }
        svg.path(rules.toString().strip(), "stroke='#b8b0a4' stroke-width='0.5'");
        y = footer(svg, y, isReady(findings));
        return svg.document(WIDTH, y, title(side), description(wiring, findings));
    }

    private static double footer(Svg svg, double top, boolean ready) {
        double y = top + 18;
        svg.words(
                10,
                y,
                13,
                "text-anchor='start' font-weight='bold'" + (ready ? "" : " fill='#8c1c13'"),
                ready ? "Nothing unsafe found." : "NOT READY TO SOLDER: unsafe findings.");
        String[] legend = {
            "Round pin: signal. Square: control or switch line. Double ring: supply.",
            "Filled: ground. Dashed: nobody knows yet.",
            "Off and unplugged before soldering; check twice; never bridge supply rails.",
            "Old instruments differ from tables. Unsure? A qualified technician; local rules first."
        };
        for (String line : legend) {
            y += 13;
            svg.words(10, y, 8.8, "text-anchor='start'", line);
        }
        return y + 12;
    }

    private static boolean isReady(List<Finding> findings) {
        return findings.stream().noneMatch(finding -> finding.severity() == Severity.UNSAFE);
    }

    private static String title(Side side) {
        return "Adapter between instrument and synth, seen from the "
                + side.name().toLowerCase(Locale.ROOT) + " side";
    }

    private static String description(Wiring wiring, List<Finding> findings) {
        var words = new StringBuilder();
        wiring.adapter()
                .routes()
                .forEach((id, route) ->
                        words.append(id).append(": ").append(route.describe()).append(". "));
        return words.append(isReady(findings) ? "Nothing unsafe found." : "Not ready to solder.")
                .toString();
    }
}
