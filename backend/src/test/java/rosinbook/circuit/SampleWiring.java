package rosinbook.circuit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import rosinbook.pitch.Note;

/** An invented violin with a round 8-pin socket and an invented synth with a round 13-pin socket; changed copy by copy. */
record SampleWiring(
        Map<String, PinRole> instrumentPins,
        Map<String, PinRole> synthPins,
        Map<String, ControlLine> lines,
        Map<String, Route> routes,
        Parts parts,
        Pickup pickup,
        Double supplyMilliamps) {
    static final ControlLine LEVEL = new ControlLine("Level", 0, 5, 100_000.0, List.of());
    static final ControlLine SOURCE = new ControlLine(
            "Source",
            0,
            5,
            null,
            List.of(new Band(0, 0.6, "straight"), new Band(0.8, 1.3, "both sounds"), new Band(2, 5, "synth alone")));

    /** Everything as it should be: no finding at all. */
    static SampleWiring good() {
        Map<String, PinRole> instrument = new LinkedHashMap<>();
        instrument.put("1", new PinRole.Ground());
        instrument.put("2", new PinRole.StringSignal(4));
        instrument.put("3", new PinRole.StringSignal(3));
        instrument.put("4", new PinRole.StringSignal(2));
        instrument.put("5", new PinRole.StringSignal(1));
        instrument.put("6", new PinRole.Mixed());
        instrument.put("7", new PinRole.Unknown());
        instrument.put("8", new PinRole.Unused());
        Map<String, PinRole> synth = new LinkedHashMap<>();
        synth.put("1", new PinRole.Ground());
        synth.put("2", new PinRole.Supply(7, 20.0, 5.0));
        synth.put("3", new PinRole.Supply(-7, 20.0, 5.0));
        synth.put("4", new PinRole.Mixed());
        for (int input = 1; input <= 6; input++) {
            synth.put(String.valueOf(4 + input), new PinRole.StringSignal(input));
        }
        synth.put("11", new PinRole.Control("level"));
        synth.put("12", new PinRole.Control("source"));
        synth.put("13", new PinRole.Unused());
        Map<String, Route> routes = new LinkedHashMap<>();
        routes.put("ground", new Route("1", "1", new Via.Straight()));
        routes.put("string-1", new Route("5", "5", new Via.Straight()));
        routes.put("string-2", new Route("4", "6", new Via.Straight()));
        routes.put("string-3", new Route("3", "7", new Via.Straight()));
        routes.put("string-4", new Route("2", "8", new Via.Straight()));
        routes.put("mixed", new Route("6", "4", new Via.Straight()));
        routes.put("tie-5", new Route(null, "9", new Via.Tied(0)));
        routes.put("tie-6", new Route(null, "10", new Via.Tied(0)));
        routes.put("level", new Route(null, "11", new Via.Divider(2700, 5100, "2", 4.5)));
        routes.put("source", new Route(null, "12", new Via.Divider(47_000, 8200, "2", 1.04)));
        return new SampleWiring(
                instrument,
                synth,
                Map.of("level", LEVEL, "source", SOURCE),
                routes,
                Parts.USUAL,
                new Pickup(500, 0, 100.0),
                null);
    }

    SampleWiring route(String id, String instrumentPin, String synthPin, Via via) {
        return route(id, new Route(instrumentPin, synthPin, via));
    }

    SampleWiring route(String id, Route route) {
        return changed(routes, map -> map.put(id, route), this::withRoutes);
    }

    SampleWiring without(String id) {
        return changed(routes, map -> map.remove(id), this::withRoutes);
    }

    SampleWiring instrumentPin(String label, PinRole role) {
        return changed(
                instrumentPins,
                map -> map.put(label, role),
                map -> new SampleWiring(map, synthPins, lines, routes, parts, pickup, supplyMilliamps));
    }

    SampleWiring synthPin(String label, PinRole role) {
        return changed(
                synthPins,
                map -> map.put(label, role),
                map -> new SampleWiring(instrumentPins, map, lines, routes, parts, pickup, supplyMilliamps));
    }

    SampleWiring line(String key, ControlLine line) {
        return changed(
                lines,
                map -> line == null ? map.remove(key) : map.put(key, line),
                map -> new SampleWiring(instrumentPins, synthPins, map, routes, parts, pickup, supplyMilliamps));
    }

    SampleWiring parts(Parts other) {
        return new SampleWiring(instrumentPins, synthPins, lines, routes, other, pickup, supplyMilliamps);
    }

    SampleWiring budget(Double milliamps) {
        return new SampleWiring(instrumentPins, synthPins, lines, routes, parts, pickup, milliamps);
    }

    Wiring wiring() {
        return wiring(connector -> connector, connector -> connector);
    }

    Wiring wiring(UnaryOperator<Connector> instrumentChange, UnaryOperator<Connector> synthChange) {
        Map<Integer, Note> notes =
                Map.of(1, Note.parse("E5"), 2, Note.parse("A4"), 3, Note.parse("D4"), 4, Note.parse("G3"));
        return Wiring.of(
                new InstrumentSide(instrumentChange.apply(connector("round 8-pin", instrumentPins)), notes, pickup),
                new SynthSide(
                        synthChange.apply(connector("round 13-pin", synthPins)), lines, Map.of(), 1e6, supplyMilliamps),
                new Adapter(routes, parts));
    }

    static Connector connector(String shape, Map<String, PinRole> roles) {
        Map<String, Pin> pins = new LinkedHashMap<>();
        roles.forEach((label, role) -> pins.put(label, Pin.of(role)));
        return Connector.of(shape, "", pins);
    }

    private SampleWiring withRoutes(Map<String, Route> map) {
        return new SampleWiring(instrumentPins, synthPins, lines, map, parts, pickup, supplyMilliamps);
    }

    private interface Change<T> {
        T apply(Map<String, T> map);
    }

    private static <T> SampleWiring changed(
            Map<String, T> map, Change<T> change, java.util.function.Function<Map<String, T>, SampleWiring> made) {
        Map<String, T> copy = new LinkedHashMap<>(map);
        change.apply(copy);
        return made.apply(copy);
    }
}
