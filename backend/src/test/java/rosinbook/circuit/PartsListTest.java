package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PartsListTest {
    @Test
    void resistors_preamps_switches_and_both_plugs_are_listed_with_rings() {
        Via choice = new Via.Switch(Map.of("both", new Via.Divider(47_000, 8200, "2", null), "off", new Via.Open()));
        Wiring wiring = SampleWiring.good()
                .route("source", null, "12", choice)
                .route("string-1", "5", "5", new Via.Preamp(6, 0, null, null, null))
                .route("tie-5", null, "9", new Via.Tied(10_000))
                .wiring();
        List<PartsList.Part> parts = PartsList.of(wiring);
        assertEquals(
                List.of("P1", "P2", "R1", "R2", "S1", "R3", "R4", "A1", "R5"),
                parts.stream().map(PartsList.Part::reference).toList());
        assertEquals(
                List.of("yellow", "violet", "black", "red", "brown"),
                parts.get(5).rings());
    }

    /** RFC 4180: a cell with a comma is quoted, quotes are doubled, lines end with CR LF. */
    @Test
    void csv_is_quoted_and_no_cell_starts_a_formula() {
        Wiring wiring = SampleWiring.good()
                .route("=1+1", null, "9", new Via.Tied(10_000))
                .route("say \"hi\", all", null, "10", new Via.Tied(10_000))
                .wiring();
        List<String> lines = List.of(PartsList.csv(wiring).split("\r\n"));
        assertEquals("reference,route,part,value,tolerance percent,rating milliwatts,coloured rings", lines.get(0));
        assertEquals("P1,,plug,\"for the instrument, to fit: round 8-pin\",,,", lines.get(1));
        assertTrue(lines.contains("R1,'=1+1,tie,10 kΩ,1,250,brown black black red brown"), lines.toString());
        assertTrue(lines.stream().anyMatch(line -> line.contains(",\"say \"\"hi\"\", all\",tie,")), lines.toString());
    }
}
