package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

class LargestWiringIT {
    /** 40 pins a side, 80 routes, 6 of them switches: the largest wiring that can be stored, built to be slow. */
    @Test
    void the_largest_wiring_is_dealt_with_in_bounded_time() {
        Map<String, PinRole> instrument = new LinkedHashMap<>();
        Map<String, PinRole> synth = new LinkedHashMap<>();
        Map<String, Route> routes = new LinkedHashMap<>();
        for (int i = 1; i <= 40; i++) {
            instrument.put("i" + i, i == 1 ? new PinRole.Ground() : new PinRole.Control("x"));
            synth.put("s" + i, synthRole(i));
            Via choice = new Via.Switch(Map.of(
                    "a", new Via.Divider(1000, 1000, "s2", null),
                    "b", new Via.Resistor(1000),
                    "c", new Via.Straight(),
                    "d", new Via.Open()));
            routes.put("switch-" + i, new Route("i" + i, "s" + (41 - i), i <= 6 ? choice : new Via.Resistor(1000)));
            routes.put("divider-" + i, new Route(null, "s" + i, new Via.Divider(1000, 2200, "s2", 1.0)));
        }
        var wiring = new Wiring(
                new InstrumentSide(SampleWiring.connector("", instrument), null, null),
                new SynthSide(SampleWiring.connector("", synth), null, null, null, null),
                Adapter.of(routes),
                Map.of("volts synth pin s5 > ground", new MeterReading.Volts(3)));
        assertTimeout(Duration.ofSeconds(20), () -> {
            assertFalse(BenchSheet.of(wiring).readyToSolder());
            Drawing.of(wiring, Side.SOLDER, WiringCheck.of(wiring).findings());
            Netlist.of(wiring);
        });
    }

    private static PinRole synthRole(int pin) {
        if (pin == 1) {
            return new PinRole.Ground();
        }
        return pin <= 20 ? PinRole.Supply.of(pin) : new PinRole.Control("x");
    }
}
