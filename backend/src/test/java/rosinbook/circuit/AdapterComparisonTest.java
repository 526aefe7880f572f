package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import rosinbook.circuit.AdapterComparison.Change;
import rosinbook.circuit.AdapterComparison.Kind;

class AdapterComparisonTest {
    private static final SampleWiring GOOD = SampleWiring.good();

    @Test
    void routes_come_go_and_change_with_their_values() {
        SampleWiring now = GOOD.without("mixed")
                .route("odd", "8", "13", new Via.Straight())
                .route("source", null, "12", new Via.Divider(43_000, 7500, "2", 1.04));
        assertEquals(
                List.of(
                        new Change("mixed", Kind.REMOVED, "instrument pin 6 to synth pin 4, straight", ""),
                        new Change("odd", Kind.ADDED, "", "instrument pin 8 to synth pin 13, straight"),
                        new Change(
                                "source",
                                Kind.CHANGED,
                                "synth pin 12, divider 47 kΩ over 8.2 kΩ from synth pin 2",
                                "synth pin 12, divider 43 kΩ over 7.5 kΩ from synth pin 2")),
                AdapterComparison.of(GOOD.wiring().adapter(), now.wiring().adapter()));
    }

    @Test
    void equal_adapters_have_no_changes() {
        assertEquals(
                List.of(),
                AdapterComparison.of(GOOD.wiring().adapter(), GOOD.wiring().adapter()));
    }
}
