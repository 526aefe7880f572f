package rosinbook.circuit;

import java.util.Map;

/**
 * One connector seen from one side. A pin's shape says what it carries: round for signals, square for control and switch
 * lines, doubled for supplies, filled for ground, dashed when unknown.
 */
final class Face {
    static final double WIDTH = 200;
    static final double HEIGHT = 250;
    private static final double RADIUS = 78;
    private static final double MIDDLE_Y = 120;

    private final Svg svg;
    private final Connector connector;
    private final double left;
    private final int mirror;
    private final double size;

    private Face(Svg svg, Connector connector, double left, Side side) {
        this.svg = svg;
        this.connector = connector;
        this.left = left;
        mirror = side == connector.drawnFrom() ? 1 : -1;
        size = connector.pins().size() > 14 ? 9 : 13;
    }

    static void draw(Svg svg, Plug plug, Connector connector, double left, double top, Side side) {
        svg.open(
                "transform='translate(0 " + Figures.plain(top) + ")'",
                plug == Plug.INSTRUMENT ? "The instrument's connector" : "The synth's connector");
        new Face(svg, connector, left, side).draw(plug);
        svg.close();
    }

    private void draw(Plug plug) {
        double middle = left + WIDTH / 2;
        String whose = plug == Plug.INSTRUMENT ? "Instrument" : "Synth";
        svg.words(middle, 16, 14, "font-weight='bold'", whose);
        svg.words(middle, 31, 11, "", Svg.fit(name(), 32));
        svg.circle(middle, MIDDLE_Y, RADIUS, "fill='none' stroke='#1d1a16'");
        int index = 0;
        boolean placed = connector.pins().values().stream().allMatch(pin -> pin.x() != null);
        for (Map.Entry<String, Pin> entry : connector.pins().entrySet()) {
            Pin pin = entry.getValue();
            double angle = 2 * Math.PI * index++ / connector.pins().size();
            double x = placed ? pin.x() : Math.sin(angle);
            double y = placed ? pin.y() : Math.cos(angle);
            pin(middle + mirror * x * (RADIUS - 18), MIDDLE_Y - y * (RADIUS - 18), entry.getKey(), pin.role(), plug);
        }
        if (!placed) {
            svg.words(middle, 216, 10, "", "Places not noted: this shows the");
            svg.words(middle, 229, 10, "", "order only, not where pins sit.");
        }
    }

    private String name() {
        return connector.name().isEmpty() ? connector.shape() : connector.name();
    }

    private void pin(double x, double y, String label, PinRole role, Plug plug) {
        svg.open("stroke='#1d1a16'", label + ": " + plug.carries(role));
        boolean ground = role instanceof PinRole.Ground;
        String fill = ground ? "fill='#1d1a16'" : "fill='#ffffff'";
        if (role instanceof PinRole.Control || role instanceof PinRole.SwitchLine) {
            svg.rect(x - size, y - size, 2 * size, 2 * size, fill);
        } else {
            String dash = role instanceof PinRole.Unknown ? " stroke-dasharray='3 2'" : "";
            svg.circle(x, y, size, fill + dash);
            if (role instanceof PinRole.Supply) {
                svg.circle(x, y, size - 3, "fill='none' stroke-width='1'");
            }
        }
        double letters = label.length() > 2 ? size * 0.65 : size * 0.95;
        String colour = ground ? "fill='#ffffff' " : "";
        svg.words(x, y + letters * 0.36, letters, colour + "stroke='none' font-weight='bold'", Svg.fit(label, 4));
        svg.close();
    }
}
