package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DiagnosisTest {
    private static final Wiring GOOD = SampleWiring.good().wiring();

    @Test
    void the_plan_counts_from_one_and_measures_everything_off_before_anything_on() {
        List<MeterStep> steps = MeterPlan.of(GOOD).steps();
        boolean powered = false;
        for (int i = 0; i < steps.size(); i++) {
            assertEquals(i + 1, steps.get(i).number());
            boolean now = steps.get(i).phase() == MeterStep.Phase.POWERED;
            assertTrue(now || !powered, "an unplugged step after a powered one");
            powered = now;
        }
        assertTrue(powered);
        assertEquals(steps.size(), MeterPlan.of(GOOD).byId().size());
    }

    /** By hand: upper resistor alone; 47 k + 8.2 k beside 2.7 k + 5.1 k from rail to ground. */
    @Test
    void expected_resistances_are_those_worked_out_by_hand() {
        Map<String, MeterStep> steps = MeterPlan.of(GOOD).byId();
        double whole = 1 / (1 / 55_200.0 + 1 / 7800.0);
        assertEquals(
                1 / (1 / 47_000.0 + 1 / (8200.0 + 7800.0)),
                steps.get("ohms synth pin 2 > synth pin 12").expected(),
                1e-6);
        assertEquals(whole, steps.get("ohms synth pin 2 > instrument pin 1").expected(), 1e-6);
        assertEquals(0, steps.get("ohms instrument pin 5 > synth pin 5").expected());
        assertEquals(
                MeterStep.Kind.ISOLATION,
                steps.get("ohms synth pin 2 > synth pin 3").kind());
        assertEquals(1.0398, steps.get("volts synth pin 12 > ground").expected(), 1e-3);
    }

    @Test
    void what_the_plan_expects_is_judged_good() {
        Map<String, MeterReading> readings = new LinkedHashMap<>();
        MeterPlan.of(GOOD).steps().forEach(step -> readings.put(step.id(), expected(step)));
        List<MeterVerdict> verdicts = Diagnosis.of(measured(GOOD, readings));
        assertEquals(readings.size(), verdicts.size());
        verdicts.forEach(verdict -> assertEquals(MeterVerdict.Judgement.GOOD, verdict.judgement(), verdict.toString()));
    }

    /** Each row: what went wrong on the bench, worked out by hand, and the words the first suspect must have. */
    @ParameterizedTest
    @CsvSource({
        "ohms instrument pin 5 > synth pin 5, open, 0, open joint in route string-1",
        "ohms instrument pin 4 > instrument pin 5, ohms, 0.3, a bridge of solder between synth pin 5 and synth pin 6",
        "volts synth pin 12 > ground, volts, 5.96, upper and lower resistor of route source swapped",
        "volts synth pin 12 > ground, volts, 7, open lower resistor (8.2 kΩ) in route source",
        "volts synth pin 11 > ground, volts, 0, open upper resistor (2.7 kΩ) in route level",
        "volts synth pin 2 > ground, volts, 0, a bridge of solder between synth pin 1 and synth pin 2"
    })
    void a_wrong_reading_names_the_fault_that_gives_it(String step, String kind, double number, String suspect) {
        List<MeterVerdict> verdicts = Diagnosis.of(measured(GOOD, Map.of(step, reading(kind, number))));
        assertEquals(MeterVerdict.Judgement.WRONG, verdicts.get(0).judgement());
        assertTrue(
                verdicts.get(0).suspects().stream().anyMatch(words -> words.startsWith(suspect)),
                verdicts.get(0).suspects().toString());
    }

    /** A rail that reads 0 V has several possible bridges; the resistance measured before decides for the one that fits. */
    @Test
    void suspects_that_explain_the_other_readings_come_first() {
        Map<String, MeterReading> readings = new LinkedHashMap<>();
        readings.put("volts synth pin 12 > ground", new MeterReading.Volts(0));
        readings.put("ohms synth pin 12 > synth pin 1", new MeterReading.Ohms(0.2));
        String first = Diagnosis.of(measured(GOOD, readings)).get(0).suspects().get(0);
        assertTrue(first.startsWith("a bridge of solder"), first);
        readings.put("ohms synth pin 12 > synth pin 1", new MeterReading.Ohms(8070));
        first = Diagnosis.of(measured(GOOD, readings)).get(0).suspects().get(0);
        assertTrue(first.startsWith("open upper resistor (47 kΩ)") || first.startsWith("open joint"), first);
    }

    /** For every single fault that changes any reading at all, its own full set of readings puts it, or one that looks the same, first. */
    @Test
    void every_noticeable_single_fault_is_found_from_its_own_readings() {
        List<MeterStep> steps = MeterPlan.of(GOOD).steps();
        Layout layout = Layout.of(GOOD, Map.of());
        int noticed = 0;
        List<Fault> faults = Fault.singles(GOOD, layout.pieces());
        for (Fault fault : faults.subList(0, 24)) {
            Map<String, MeterReading> readings = new LinkedHashMap<>();
            var bench = new Bench(GOOD, Map.of(), fault);
            steps.forEach(step -> readings.put(step.id(), shown(step, bench.reading(step))));
            List<MeterVerdict> wrong = Diagnosis.of(measured(GOOD, readings)).stream()
                    .filter(verdict -> verdict.judgement() == MeterVerdict.Judgement.WRONG)
                    .toList();
            if (!wrong.isEmpty()) {
                noticed++;
                assertTrue(
                        wrong.stream().anyMatch(verdict -> verdict.suspects().contains(fault.sentence())),
                        fault.sentence() + " not among " + wrong);
            }
        }
        assertTrue(noticed >= 20, "only " + noticed + " of the faults were noticed at all");
    }

    @Test
    void volts_where_ohms_are_asked_for_are_misplaced_not_wrong() {
        var readings = Map.<String, MeterReading>of(
                "ohms instrument pin 5 > synth pin 5",
                new MeterReading.Volts(3),
                "no such step",
                new MeterReading.Ohms(3));
        Diagnosis.of(measured(GOOD, readings))
                .forEach(verdict -> assertEquals(MeterVerdict.Judgement.MISPLACED, verdict.judgement()));
    }

    @Test
    void each_position_of_a_switch_has_steps_of_its_own() {
        Via choice = new Via.Switch(Map.of("both", new Via.Divider(47_000, 8200, "2", 1.04), "rest", new Via.Tied(0)));
        List<MeterStep> steps = MeterPlan.of(
                        SampleWiring.good().route("source", null, "12", choice).wiring())
                .steps();
        List<Double> volts = steps.stream()
                .filter(step ->
                        step.kind() == MeterStep.Kind.VOLTAGE && step.from().equals("synth pin 12"))
                .map(MeterStep::expected)
                .toList();
        assertEquals(2, volts.size());
        assertNotEquals(volts.get(0), volts.get(1), 0.5);
        assertTrue(steps.stream().anyMatch(step -> step.instruction().startsWith("With switch source at rest.")));
    }

    private static Wiring measured(Wiring wiring, Map<String, MeterReading> readings) {
        return new Wiring(wiring.instrument(), wiring.synth(), wiring.adapter(), readings);
    }

    private static MeterReading expected(MeterStep step) {
        return shown(step, step.expected() == null ? Double.POSITIVE_INFINITY : step.expected());
    }

    private static MeterReading shown(MeterStep step, double number) {
        if (step.kind() == MeterStep.Kind.VOLTAGE) {
            return new MeterReading.Volts(number);
        }
        return Double.isInfinite(number) ? new MeterReading.NoConnection() : new MeterReading.Ohms(number);
    }

    private static MeterReading reading(String kind, double number) {
        return switch (kind) {
            case "open" -> new MeterReading.NoConnection();
            case "ohms" -> new MeterReading.Ohms(number);
            default -> new MeterReading.Volts(number);
        };
    }
}
