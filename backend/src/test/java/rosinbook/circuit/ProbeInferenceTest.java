package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Readings are invented; the levels are of the size common practice sees at piezo bridges (no source). */
class ProbeInferenceTest {
    private static final MeterReading OPEN = new MeterReading.NoConnection();

    private static Map<String, PinProbe> violin() {
        Map<String, PinProbe> pins = new LinkedHashMap<>();
        pins.put("1", probe(0.1, 0.0, new MeterReading.Ohms(0.4), 0.1, 0.1, 0.1, 0.1));
        pins.put("2", probe(0.4, 0.0, OPEN, 80, 5, 2, 1));
        pins.put("3", probe(0.4, 0.0, OPEN, 6, 90, 6, 2));
        pins.put("4", probe(0.4, 0.0, OPEN, 2, 7, 85, 5));
        pins.put("5", probe(0.4, 0.0, OPEN, 1, 2, 6, 100));
        pins.put("6", probe(0.6, 0.0, OPEN, 40, 45, 42, 50));
        pins.put("7", probe(0.2, 7.02, OPEN, 0.2, 0.2, 0.2, 0.2));
        pins.put("8", probe(0.2, 0.0, OPEN, 0.2, 0.3, 0.2, 0.2));
        return pins;
    }

    @Test
    void a_full_table_gives_every_role_with_a_reason() {
        ProbeReport report = ProbeInference.of(new ProbeTable(4, violin()));
        assertEquals(new PinRole.Ground(), role(report, "1"));
        for (int string = 1; string <= 4; string++) {
            assertEquals(new PinRole.StringSignal(string), role(report, String.valueOf(string + 1)));
        }
        assertEquals(new PinRole.Mixed(), role(report, "6"));
        assertEquals(PinRole.Supply.of(7), role(report, "7"));
        assertEquals(new PinRole.Unused(), role(report, "8"));
        assertEquals(List.of(), report.contradictions());
        report.pins().values().forEach(guess -> {
            assertTrue(guess.confidence() >= 0.8 && guess.confidence() <= 1, guess.toString());
            assertTrue(guess.reason().endsWith("."), guess.reason());
        });
        assertTrue(
                report.pins().get("2").reason().contains("80 mV"),
                report.pins().get("2").reason());
    }

    @Test
    void a_single_bowed_string_is_a_weak_guess_that_says_what_to_bow_next() {
        ProbeReport report = ProbeInference.of(new ProbeTable(4, Map.of("2", probe(0.4, 0.0, OPEN, 80))));
        PinGuess guess = report.pins().get("2");
        assertEquals(new PinRole.StringSignal(1), guess.role());
        assertTrue(guess.confidence() < 0.5);
        assertTrue(guess.settle().startsWith("Bow string 2 with the others damped"), guess.settle());
    }

    @Test
    void strings_that_neither_stand_out_nor_agree_stay_unknown_with_the_deciding_reading() {
        PinGuess guess = ProbeInference.of(new ProbeTable(4, Map.of("2", probe(0.4, 0.0, OPEN, 80, 40, 2, 1))))
                .pins()
                .get("2");
        assertEquals(new PinRole.Unknown(), guess.role());
        assertTrue(guess.settle().startsWith("Bow string 1 with the others damped, then string 2"), guess.settle());
    }

    @Test
    void a_pin_nobody_measured_stays_unknown() {
        PinGuess guess = ProbeInference.of(new ProbeTable(4, Map.of("2", new PinProbe(null, null, null))))
                .pins()
                .get("2");
        assertEquals(new PinRole.Unknown(), guess.role());
        assertEquals(0, guess.confidence());
    }

    @Test
    void ground_that_holds_a_voltage_is_a_contradiction_settled_with_everything_off() {
        Map<String, PinProbe> pins = violin();
        pins.put("7", probe(0.2, 7.0, new MeterReading.Ohms(0.5), 0.2, 0.2, 0.2, 0.2));
        var contradiction = onlyContradiction(pins);
        assertEquals(List.of("7"), contradiction.pins());
        assertTrue(contradiction.settle().contains("switched off and unplugged"), contradiction.settle());
    }

    @Test
    void two_pins_with_one_string_contradict_each_other_and_lose_confidence() {
        Map<String, PinProbe> pins = violin();
        pins.put("8", pins.get("2"));
        ProbeReport report = ProbeInference.of(new ProbeTable(4, pins));
        assertEquals(List.of("2", "8"), report.contradictions().get(0).pins());
        assertTrue(report.contradictions().get(0).settle().contains("resistance between them"));
        assertTrue(report.pins().get("2").confidence() < 0.5);
        assertTrue(report.pins().get("3").confidence() > 0.8);
    }

    @Test
    void a_string_that_no_pin_carries_is_missed() {
        Map<String, PinProbe> pins = violin();
        pins.remove("3");
        var contradiction = onlyContradiction(pins);
        assertTrue(contradiction.sentence().startsWith("String 2 was bowed"), contradiction.sentence());
    }

    @Test
    void a_table_without_ground_says_how_to_find_it() {
        Map<String, PinProbe> pins = violin();
        pins.remove("1");
        assertTrue(onlyContradiction(pins).settle().contains("metal shell"));
    }

    @Test
    void a_pin_louder_in_silence_than_when_bowed_is_a_contradiction() {
        Map<String, PinProbe> pins = violin();
        pins.put("8", probe(30, 0.0, OPEN, 4, 5, 4, 3));
        assertTrue(onlyContradiction(pins).settle().startsWith("Damp all strings"));
    }

    @Test
    void a_wandering_voltage_is_no_rail() {
        var reading = new ProbeReading(0.1, 1.0);
        var other = new ProbeReading(0.1, 4.0);
        PinGuess guess = ProbeInference.of(
                        new ProbeTable(4, Map.of("9", new PinProbe(reading, Map.of(1, other), OPEN))))
                .pins()
                .get("9");
        assertEquals(new PinRole.Unknown(), guess.role());
        assertTrue(guess.reason().contains("wanders from 1 V to 4 V"), guess.reason());
    }

    @Test
    void impossible_readings_are_refused_by_field() {
        refused("acMillivolts is NaN", () -> new ProbeReading(Double.NaN, null));
        refused("acMillivolts is -1", () -> new ProbeReading(-1.0, null));
        refused("dcVolts is 1001", () -> new ProbeReading(null, 1001.0));
        refused("toGround is in volts", () -> new PinProbe(null, null, new MeterReading.Volts(1)));
        refused("strings is 13", () -> new ProbeTable(13, violin()));
        refused("pins has a reading of pin 1 for string 4", () -> new ProbeTable(3, violin()));
    }

    private static void refused(String start, org.junit.jupiter.api.function.Executable made) {
        var problem = assertThrows(IllegalArgumentException.class, made);
        assertTrue(problem.getMessage().startsWith(start), problem.getMessage());
    }

    private static ProbeReport.Contradiction onlyContradiction(Map<String, PinProbe> pins) {
        ProbeReport report = ProbeInference.of(new ProbeTable(4, pins));
        assertEquals(1, report.contradictions().size(), report.contradictions().toString());
        return report.contradictions().get(0);
    }

    private static PinRole role(ProbeReport report, String label) {
        return report.pins().get(label).role();
    }

    private static PinProbe probe(double silent, double volts, MeterReading toGround, double... bowed) {
        Map<Integer, ProbeReading> readings = new LinkedHashMap<>();
        for (int i = 0; i < bowed.length; i++) {
            readings.put(i + 1, new ProbeReading(bowed[i], volts));
        }
        return new PinProbe(new ProbeReading(silent, volts), readings, toGround);
    }
}
