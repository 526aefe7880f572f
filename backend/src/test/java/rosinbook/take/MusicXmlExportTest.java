package rosinbook.take;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.io.StringReader;
import java.util.List;
import java.util.OptionalDouble;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.audiveris.proxymusic.ScorePartwise;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.w3c.dom.bootstrap.DOMImplementationRegistry;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSInput;
import org.xml.sax.InputSource;

/** The schema is that of MusicXML 4.0, as it comes with the library proxymusic. */
class MusicXmlExportTest {
    private static Schema schema;

    @BeforeAll
    static void readSchema() throws Exception {
        DOMImplementationLS inputs =
                (DOMImplementationLS) DOMImplementationRegistry.newInstance().getDOMImplementation("LS");
        SchemaFactory factory = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
        factory.setResourceResolver((type, namespace, publicId, systemId, base) -> {
            String name = systemId.substring(systemId.lastIndexOf('/') + 1);
            LSInput input = inputs.createLSInput();
            input.setByteStream(MusicXmlExportTest.class.getResourceAsStream("/published/musicxml/" + name));
            input.setSystemId(systemId);
            return input;
        });
        try (InputStream in = ScorePartwise.class.getResourceAsStream("/META-INF/jaxb/xsd/musicxml.xsd")) {
            schema = factory.newSchema(new StreamSource(in));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "o1_air, 1, true",
        "o1_air, 4, false",
        "o2_slides, 4, true",
        "o2_slides, 8, false",
        "o3_reel, 2, true",
        "o3_reel, 4, false",
        "o4_five, 4, true",
        "o4_five, 8, false"
    })
    void cleaned_takes_are_valid_and_every_measure_is_full(String piece, int grid, boolean voices) throws Exception {
        Cleaning cleaning = Cleaner.STANDARD.clean(Playing.published(piece, "reasonable"));
        String xml = new MusicXmlExport(OptionalDouble.empty(), grid, voices).toXml(cleaning);
        Document document = parsed(xml);
        schema.newValidator().validate(new DOMSource(document));
        NodeList measures = document.getElementsByTagName("measure");
        for (int index = 0; index < measures.getLength(); index++) {
            assertEquals(4 * grid, length((Element) measures.item(index)), "measure " + index);
        }
    }

    @Test
    void notes_fall_where_they_were_played() throws Exception {
        Playing playing = Playing.violin();
        for (int beat = 0; beat < 8; beat++) {
            playing.note(2, 69 + beat % 3 * 2, 1 + beat * 0.5, 1.48 + beat * 0.5, 90);
        }
        String xml = new MusicXmlExport(OptionalDouble.of(120), 4, false).toXml(Cleaner.STANDARD.clean(playing.take()));
        Document document = parsed(xml);
        assertEquals(2, document.getElementsByTagName("measure").getLength());
        NodeList notes = document.getElementsByTagName("note");
        assertEquals(8, notes.getLength());
        for (int index = 0; index < 8; index++) {
            assertEquals("quarter", text((Element) notes.item(index), "type"));
            assertEquals(List.of("A", "B", "C").get(index % 3), text((Element) notes.item(index), "step"));
        }
        assertEquals("1", text((Element) notes.item(2), "alter"));
    }

    @Test
    void a_note_across_the_bar_line_is_tied() throws Exception {
        Playing playing = Playing.violin().note(2, "A4", 1, 2.5, 90).note(2, "B4", 2.5, 4.0, 90);
        Document document = parsed(
                new MusicXmlExport(OptionalDouble.of(120), 4, false).toXml(Cleaner.STANDARD.clean(playing.take())));
        NodeList ties = document.getElementsByTagName("tie");
        assertEquals("start", ((Element) ties.item(0)).getAttribute("type"));
        assertEquals("stop", ((Element) ties.item(1)).getAttribute("type"));
        assertEquals(2, ties.getLength());
    }

    @Test
    void the_tempo_of_a_steady_melody_is_found() {
        Playing playing = Playing.violin();
        double at = 1;
        for (int beat = 0; beat < 40; beat++) {
            double length = 60 / 96.0 * (beat % 5 == 0 ? 0.5 : beat % 7 == 0 ? 2 : 1);
            playing.note(2, 69 + beat % 4, at, at + length - 0.02, 90);
            at += length;
        }
        List<CleanNote> notes = Cleaner.STANDARD.clean(playing.take()).notes();
        assertEquals(96, TempoEstimate.bpm(notes), 1);
    }

    @Test
    void a_take_too_long_to_print_is_refused() {
        Playing playing = Playing.violin().note(2, "A4", 1, 2, 90).note(2, "A4", 200_000, 200_001, 90);
        Cleaning cleaning = Cleaner.STANDARD.clean(playing.take());
        MusicXmlExport fast = new MusicXmlExport(OptionalDouble.of(400), 8, false);
        assertTrue(assertThrows(IllegalArgumentException.class, () -> fast.toXml(cleaning))
                .getMessage()
                .contains("20 000 is the most"));
    }

    private static int length(Element measure) {
        int length = 0;
        int longest = 0;
        for (int index = 0; index < measure.getChildNodes().getLength(); index++) {
            if (measure.getChildNodes().item(index) instanceof Element element) {
                if (element.getTagName().equals("backup")) {
                    longest = Math.max(longest, length);
                    length -= Integer.parseInt(text(element, "duration"));
                    assertEquals(0, length, "a voice before the backup");
                } else if (element.getTagName().equals("note")
                        && element.getElementsByTagName("chord").getLength() == 0) {
                    length += Integer.parseInt(text(element, "duration"));
                }
            }
        }
        return Math.max(longest, length);
    }

    private static String text(Element element, String name) {
        return element.getElementsByTagName(name).item(0).getTextContent();
    }

    private static Document parsed(String xml) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
    }
}
