package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

class DrawingTest {
    private static final SampleWiring GOOD = SampleWiring.good();

    @Test
    void the_drawing_is_well_formed_titled_and_described() throws Exception {
        Document document = parsed(GOOD.wiring(), Side.MATING);
        Element root = document.getDocumentElement();
        assertEquals("img", root.getAttribute("role"));
        assertEquals("drawing-title drawing-description", root.getAttribute("aria-labelledby"));
        String description = document.getElementsByTagName("desc").item(0).getTextContent();
        assertTrue(description.contains("string-1: instrument pin 5 to synth pin 5, straight"), description);
        assertTrue(description.contains("divider 47 kΩ over 8.2 kΩ"), description);
    }

    @Test
    void the_pin_of_a_string_is_called_an_input_on_the_synth() throws Exception {
        String drawn = Drawing.of(GOOD.wiring(), Side.MATING, List.of());
        int synth = drawn.indexOf("The synth");
        String face = drawn.substring(synth, drawn.indexOf("from instrument pin"));
        assertTrue(face.contains(": input 1"), face);
        assertFalse(face.contains(": string 1"), face);
        assertTrue(drawn.substring(0, synth).contains(": string 1"), drawn);
        assertTrue(texts(parsed(GOOD.wiring(), Side.MATING)).contains("input 1"), "at the end of its route");
    }

    @Test
    void the_side_is_written_large_and_mirrors_the_pins() throws Exception {
        Wiring placed = GOOD.wiring(connector -> placed(connector), connector -> placed(connector));
        Document mating = parsed(placed, Side.MATING);
        Document solder = parsed(placed, Side.SOLDER);
        assertEquals("MATING SIDE", texts(mating).get(0));
        assertEquals("SOLDER SIDE", texts(solder).get(0));
        List<Double> front = pinPlaces(mating);
        List<Double> back = pinPlaces(solder);
        assertFalse(front.isEmpty());
        for (int i = 0; i < front.size(); i++) {
            double middle = front.get(i) < 200 ? 100 : 300;
            assertEquals(2 * middle, front.get(i) + back.get(i), 0.15);
        }
    }

    @Test
    void pins_without_noted_places_say_that_only_their_order_is_shown() throws Exception {
        assertTrue(texts(parsed(GOOD.wiring(), Side.MATING)).contains("Places not noted: this shows the"));
    }

    @Test
    void every_route_shows_its_values_and_every_kind_of_way_can_be_drawn() throws Exception {
        SampleWiring all = GOOD.route("string-1", "5", "5", new Via.Preamp(6, 0.5, null, "2", null))
                .route("string-2", "4", "6", new Via.Resistor(4700))
                .route("odd", "7", null, new Via.Open())
                .route("tie-5", null, "9", new Via.Tied(10_000))
                .route(
                        "source",
                        null,
                        "12",
                        new Via.Switch(
                                Map.of("both", new Via.Divider(47_000, 8200, "2", null), "off", new Via.Open())));
        assertEquals(
                java.util.Set.of(Via.class.getPermittedSubclasses()),
                all.routes().values().stream()
                        .map(route -> route.via().getClass())
                        .collect(java.util.stream.Collectors.toSet()));
        List<String> texts = texts(parsed(all.wiring(), Side.MATING));
        for (String words : List.of(
                "preamp +6 dB, 0.5 mA from synth pin 2",
                "resistor 4.7 kΩ",
                "left open",
                "tied to ground by 10 kΩ",
                "both: divider 47 kΩ over 8.2 kΩ from synth pin 2",
                "divider 2.7 kΩ over 5.1 kΩ from synth pin 2")) {
            assertTrue(texts.contains(words), words + " not among " + texts);
        }
    }

    @Test
    void an_unsafe_route_says_so_in_words() throws Exception {
        List<String> texts =
                texts(parsed(GOOD.route("odd", "1", "2", new Via.Straight()).wiring(), Side.MATING));
        assertTrue(texts.contains("UNSAFE · odd"), texts.toString());
        assertTrue(texts.contains("NOT READY TO SOLDER: unsafe findings."));
        assertTrue(texts(parsed(GOOD.wiring(), Side.MATING)).contains("Nothing unsafe found."));
    }

    @Test
    void hostile_words_stay_words() throws Exception {
        String hostile = "</text><script>alert('x\")&\uD800\uFFFE";
        Wiring wiring = GOOD.route(hostile, "7", null, new Via.Open())
                .wiring(
                        connector -> new Connector(hostile, hostile, connector.pins(), Side.MATING),
                        connector -> connector);
        Document document = parsed(wiring, Side.MATING);
        assertEquals(0, document.getElementsByTagName("script").getLength());
        assertTrue(
                texts(document).contains("</text><script>alert('x\")&\uFFFD\uFFFD"),
                texts(document).toString());
    }

    @Test
    void no_style_or_script_stands_in_the_drawing() throws Exception {
        String svg = Drawing.of(GOOD.wiring(), Side.MATING, List.of());
        assertFalse(svg.contains("style"), svg);
        assertFalse(svg.contains("<script"));
        assertFalse(svg.contains("href"));
    }

    @Test
    void forty_pins_stay_inside_the_drawing() throws Exception {
        Map<String, PinRole> many = new LinkedHashMap<>();
        for (int i = 1; i <= 40; i++) {
            many.put("p" + i, new PinRole.Unknown());
        }
        Wiring wiring = GOOD.wiring(connector -> SampleWiring.connector("", many), connector -> connector);
        pinPlaces(parsed(wiring, Side.MATING)).forEach(x -> assertTrue(x > 0 && x < 400));
    }

    private static Connector placed(Connector connector) {
        Map<String, Pin> pins = new LinkedHashMap<>();
        connector.pins().forEach((label, pin) -> {
            double angle = 0.2 + 2 * Math.PI * pins.size() / connector.pins().size();
            pins.put(label, new Pin(pin.role(), 0.9 * Math.sin(angle), 0.9 * Math.cos(angle), ""));
        });
        return Connector.of(connector.shape(), connector.name(), pins);
    }

    private static Document parsed(Wiring wiring, Side side) throws Exception {
        String svg = Drawing.of(wiring, side, WiringCheck.of(wiring).findings());
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    private static List<String> texts(Document document) {
        List<String> texts = new ArrayList<>();
        var found = document.getElementsByTagName("text");
        for (int i = 0; i < found.getLength(); i++) {
            texts.add(found.item(i).getTextContent());
        }
        return texts;
    }

    /** Where the labels of the pins in both faces stand. */
    private static List<Double> pinPlaces(Document document) {
        List<Double> places = new ArrayList<>();
        var found = document.getElementsByTagName("text");
        for (int i = 0; i < found.getLength(); i++) {
            Element text = (Element) found.item(i);
            if (text.getAttribute("stroke").equals("none")) {
                places.add(Double.valueOf(text.getAttribute("x")));
            }
        }
        return places;
    }
}
