package rosinbook.circuit;

import java.util.Map;

/** One route as a row: the pin it starts at on the left, what stands in the way in the middle, where it ends on the right. */
final class RouteRow {
    private static final double FROM_X = 122;
    private static final double TO_X = 278;
    private static final double LINE_Y = 26;
    private static final double STEP = 15;
    private static final String INK = "stroke='#1d1a16'";

    private final Svg svg;
    private final Wiring wiring;
    private final Route route;

    private RouteRow(Svg svg, Wiring wiring, Route route) {
        this.svg = svg;
        this.wiring = wiring;
        this.route = route;
    }

    static double height(Route route) {
        if (route.via() instanceof Via.Switch choice) {
            return 58 + STEP * choice.positions().size();
        }
        return route.via() instanceof Via.Divider ? 84 : 58;
    }

    static void draw(Svg svg, Wiring wiring, String id, Route route, double top, boolean unsafe) {
        svg.open("transform='translate(0 " + Figures.plain(top) + ")'", id + ": " + route.describe());
        new RouteRow(svg, wiring, route).draw(id, unsafe);
        svg.close();
    }

    private void draw(String id, boolean unsafe) {
        if (unsafe) {
            svg.rect(
                    2,
                    2,
                    396,
                    height(route) - 4,
                    "fill='none' stroke='#8c1c13' stroke-width='2' stroke-dasharray='6 3'");
        }
        svg.words(
                200,
                13,
                10,
                unsafe ? "fill='#8c1c13' font-weight='bold'" : "",
                (unsafe ? "UNSAFE · " : "") + Svg.fit(id, 26));
        start();
        end();
        middle();
        double labelY = route.via() instanceof Via.Divider ? 76 : 51;
        svg.words(200, labelY, Svg.USUAL_SIZE, "", label(route.via()));
        if (route.via() instanceof Via.Switch choice) {
            double y = 51;
            for (Map.Entry<String, Via> position : choice.positions().entrySet()) {
                y += STEP;
                String words = position.getKey() + ": " + position.getValue().describe();
                svg.words(200, y, Svg.USUAL_SIZE, "", Svg.fit(words, 62));
            }
        }
    }

    private static String label(Via via) {
        return via instanceof Via.Switch ? "switch" : Svg.fit(via.describe(), 62);
    }

    private void start() {
        if (route.instrumentPin() != null) {
            pin(10, "start", Plug.INSTRUMENT, route.instrumentPin());
        } else if (route.via() instanceof Via.Divider divider && divider.supplyPin() != null) {
            pin(10, "start", Plug.SYNTH, divider.supplyPin());
        }
    }

    private void end() {
        if (route.synthPin() != null) {
            pin(390, "end", Plug.SYNTH, route.synthPin());
        }
    }

    private void pin(double x, String anchor, Plug plug, String label) {
        Pin pin = plug.connector(wiring).pins().get(label);
        String role = pin == null ? "not in the table" : plug.carries(pin.role());
        svg.words(x, 24, 14, "text-anchor='" + anchor + "' font-weight='bold'", label);
        String whose = anchor.equals("start") && plug == Plug.SYNTH ? "synth: " : "";
        svg.words(x, 38, Svg.USUAL_SIZE, "text-anchor='" + anchor + "'", Svg.fit(whose + role, 21));
    }

    private void middle() {
        Via via = route.via();
        if (via instanceof Via.Open || via instanceof Via.Tied) {
            stub(via);
            return;
        }
        svg.line(FROM_X, LINE_Y, TO_X, LINE_Y, INK);
        if (via instanceof Via.Resistor) {
            box(200);
        } else if (via instanceof Via.Preamp) {
            svg.path("M186 16 L186 36 L214 26 Z", "stroke='#1d1a16' fill='#ffffff'");
        } else if (via instanceof Via.Divider divider) {
            divider(divider);
        } else if (via instanceof Via.Switch) {
            svg.rect(184, 18, 32, 14, "fill='#ffffff'");
            svg.line(184, LINE_Y, 213, 18, INK);
            svg.circle(184, LINE_Y, 2.5, "fill='#1d1a16'").circle(216, LINE_Y, 2.5, "fill='#1d1a16'");
        }
    }

    /** The upper resistor lies in the line, the lower one hangs from it to ground. */
    private void divider(Via.Divider divider) {
        box(165);
        svg.words(165, 43, 10, "", Figures.ohms(divider.upperOhms()));
        svg.circle(224, LINE_Y, 2.5, "fill='#1d1a16'");
        svg.line(224, LINE_Y, 224, 60, INK);
        svg.rect(219, 31, 10, 24, "stroke='#1d1a16' fill='#ffffff'");
        svg.words(234, 47, 10, "text-anchor='start'", Figures.ohms(divider.lowerOhms()));
        ground(224, 57);
    }

    private void stub(Via via) {
        boolean fromLeft = route.synthPin() == null;
        svg.line(fromLeft ? FROM_X : 200, LINE_Y, fromLeft ? 200 : TO_X, LINE_Y, INK);
        if (via instanceof Via.Open) {
            svg.path("M195 21 L205 31 M195 31 L205 21", INK);
        } else {
            if (((Via.Tied) via).ohms() > 0) {
                box(fromLeft ? 160 : 240);
            }
            ground(200, LINE_Y);
        }
    }

    private void box(double x) {
        svg.rect(x - 14, LINE_Y - 5, 28, 10, "stroke='#1d1a16' fill='#ffffff'");
    }

    private void ground(double x, double y) {
        svg.line(x, y, x, y + 4, INK);
        svg.line(x - 7, y + 4, x + 7, y + 4, INK);
        svg.line(x - 3.5, y + 7, x + 3.5, y + 7, INK);
    }
}
