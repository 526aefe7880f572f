package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class WiringCheckTest {
    private static final SampleWiring GOOD = SampleWiring.good();
    private static final Via WIRE = new Via.Straight();

    @Test
    void a_good_wiring_has_no_finding_and_is_ready_to_solder() {
        CheckReport report = WiringCheck.of(GOOD.wiring());
        assertEquals(List.of(), report.findings());
        assertTrue(report.readyToSolder());
    }

    /** One wiring that trips each rule, and one as close to it as can be that must not. */
    static Stream<Arguments> cases() {
        return Stream.of(
                arguments(Rule.PIN_NOT_THERE, GOOD.route("odd", "9", "13", WIRE), GOOD.route("odd", "8", "13", WIRE)),
                arguments(
                        Rule.UNKNOWN_PIN_JOINED,
                        GOOD.route("odd", "7", "13", WIRE),
                        GOOD.route("odd", "7", null, new Via.Open())),
                arguments(
                        Rule.UNKNOWN_PIN_JOINED,
                        GOOD.synthPin("13", new PinRole.Unknown()).route("odd", null, "13", new Via.Tied(0)),
                        GOOD.synthPin("13", new PinRole.Unknown())),
                arguments(
                        Rule.RAIL_TO_GROUND,
                        GOOD.route("odd", "1", "2", WIRE),
                        GOOD.route("odd", "1", "2", new Via.Resistor(10_000))),
                arguments(
                        Rule.RAIL_TO_GROUND,
                        GOOD.route("odd", null, "3", new Via.Tied(0)),
                        GOOD.route("odd", null, "3", new Via.Tied(47_000))),
                arguments(
                        Rule.RAIL_TO_RAIL,
                        GOOD.instrumentPin("8", PinRole.Supply.of(9)).route("odd", "8", "2", WIRE),
                        GOOD.instrumentPin("8", PinRole.Supply.of(7)).route("odd", "8", "2", WIRE)),
                arguments(
                        Rule.RAIL_TO_RAIL,
                        GOOD.route("odd", "8", "2", WIRE).route("even", "8", "3", WIRE),
                        GOOD.route("odd", "8", "2", WIRE).route("even", "8", "3", new Via.Resistor(100_000))),
                arguments(
                        Rule.RAIL_INTO_SIGNAL,
                        GOOD.route("odd", "8", "2", WIRE)
                                .route("even", "8", "9", WIRE)
                                .without("tie-5"),
                        GOOD.route("odd", "8", "2", WIRE).route("even", "8", "13", WIRE)),
                arguments(
                        Rule.RAIL_INTO_SIGNAL,
                        GOOD.without("tie-5").route("odd", null, "9", new Via.Divider(47_000, 8200, "2", null)),
                        GOOD.without("tie-5").route("odd", null, "9", new Via.Divider(91_000, 100, "2", null))),
                arguments(
                        Rule.RAIL_INTO_SIGNAL,
                        GOOD.route("string-1", "5", "2", new Via.Preamp(12, 0.5, 1e7, "2", null)),
                        GOOD.route("string-1", "5", "5", new Via.Preamp(12, 0.5, 1e7, "2", null))),
                arguments(
                        Rule.DRIVEN_TWICE,
                        GOOD.route("odd", null, "12", new Via.Divider(10_000, 1000, "3", null)),
                        GOOD.route("odd", null, "12", new Via.Tied(1e6))),
                arguments(
                        Rule.DRIVEN_TWICE,
                        GOOD.instrumentPin("8", new PinRole.Control("source")).route("odd", "8", "12", WIRE),
                        GOOD.instrumentPin("8", new PinRole.Control("source"))
                                .without("source")
                                .route("odd", "8", "12", WIRE)),
                arguments(
                        Rule.DRIVEN_TWICE,
                        GOOD.synthPin("13", PinRole.Supply.of(7))
                                .route("odd", "8", "2", WIRE)
                                .route("even", "8", "13", WIRE),
                        GOOD.synthPin("13", PinRole.Supply.of(7)).route("odd", "8", "2", WIRE)),
                arguments(
                        Rule.GROUNDS_APART,
                        GOOD.route("ground", "1", "1", new Via.Resistor(10)),
                        GOOD.instrumentPin("8", new PinRole.Ground())),
                arguments(
                        Rule.CONTROL_OUT_OF_RANGE,
                        GOOD.route("level", null, "11", new Via.Divider(1000, 2700, "2", null)),
                        GOOD.line("level", new ControlLine("Level", 0, 5.2, 100_000.0, List.of()))
                                .route("level", null, "11", new Via.Divider(1000, 2700, "2", null))),
                arguments(
                        Rule.CONTROL_OUT_OF_RANGE,
                        GOOD.route("level", null, "11", new Via.Divider(2700, 5100, "3", null)),
                        GOOD.line("level", new ControlLine("Level", -5, 5, 100_000.0, List.of()))
                                .route("level", null, "11", new Via.Divider(2700, 5100, "3", null))),
                arguments(
                        Rule.SUPPLY_OVERDRAWN,
                        GOOD.synthPin("2", new PinRole.Supply(7, 1.05, 5.0)),
                        GOOD.synthPin("2", new PinRole.Supply(7, 1.06, 5.0))),
                arguments(Rule.SUPPLY_OVERDRAWN, GOOD.budget(1.05), GOOD.budget(1.06)),
                arguments(
                        Rule.RESISTOR_OVERLOADED,
                        GOOD.route("odd", "8", "2", WIRE).route("even", null, "2", new Via.Tied(180)),
                        GOOD.route("odd", "8", "2", WIRE).route("even", null, "2", new Via.Tied(200))),
                arguments(
                        Rule.RESISTOR_WARM,
                        GOOD.route("even", null, "2", new Via.Tied(390)),
                        GOOD.route("even", null, "2", new Via.Tied(430))),
                arguments(
                        Rule.TWO_STRINGS_ONE_INPUT,
                        GOOD.route("string-4", "2", "7", WIRE),
                        GOOD.without("tie-5").route("odd", "2", "9", WIRE)),
                arguments(
                        Rule.STRING_WITHOUT_INPUT,
                        GOOD.without("string-4"),
                        GOOD.without("string-4").route("odd", "2", null, new Via.Open())),
                arguments(
                        Rule.STRING_WITHOUT_INPUT,
                        GOOD.route("odd", "2", null, new Via.Tied(0)),
                        GOOD.route("odd", "2", null, new Via.Tied(1e6))),
                arguments(
                        Rule.CONTROL_SPILLS,
                        GOOD.route("source", null, "12", new Via.Divider(43_000, 15_000, "2", null))
                                .line("source", touching()),
                        GOOD.line("source", touching())),
                arguments(
                        Rule.CONTROL_NEAR_LIMIT,
                        GOOD.line("level", new ControlLine("Level", 0, 5, null, List.of()))
                                .route("level", null, "11", new Via.Divider(12_000, 30_000, "2", null)),
                        GOOD),
                arguments(
                        Rule.DIVIDER_MISSES,
                        GOOD.line("source", new ControlLine("Source", 0, 5, 100_000.0, List.of())),
                        GOOD.line("source", new ControlLine("Source", 0, 5, 1e6, List.of()))),
                arguments(
                        Rule.DIVIDER_UNFED,
                        GOOD.route("source", null, "12", new Via.Divider(47_000, 8200, "13", null)),
                        GOOD),
                arguments(
                        Rule.PREAMP_UNFED,
                        preamps(GOOD, new Via.Preamp(6, 0.5, null, null, null)),
                        preamps(GOOD, new Via.Preamp(6, 0, null, null, null))),
                arguments(
                        Rule.PREAMP_UNFED,
                        preamps(GOOD, new Via.Preamp(6, 0.5, null, "2", "2")),
                        preamps(GOOD, new Via.Preamp(6, 0.5, null, "2", "3"))),
                arguments(
                        Rule.LINE_NOT_DESCRIBED,
                        GOOD.line("source", null),
                        GOOD.line("source", null).route("source", null, "12", new Via.Open())),
                arguments(
                        Rule.ROLES_DIFFER,
                        GOOD.route("mixed", "6", "9", WIRE).without("tie-5"),
                        GOOD.route("mix-1", "5", "4", new Via.Resistor(100_000))),
                arguments(
                        Rule.INPUT_FLOATING,
                        GOOD.without("tie-5"),
                        GOOD.route("tie-5", null, "9", new Via.Tied(10_000))),
                arguments(
                        Rule.LEVELS_UNEVEN,
                        GOOD.route("string-4", "2", "8", new Via.Preamp(6, 0.5, null, "2", null)),
                        preamps(GOOD, new Via.Preamp(6, 0.5, null, "2", null))),
                arguments(
                        Rule.STRINGS_CROSSED,
                        GOOD.route("string-1", "5", "6", WIRE).route("string-2", "4", "5", WIRE),
                        GOOD.route("string-4", "2", "9", WIRE)
                                .without("tie-5")
                                .route("tie-4", null, "8", new Via.Tied(0))),
                arguments(
                        Rule.MIXED_MISSING,
                        GOOD.without("mixed"),
                        GOOD.without("mixed").synthPin("4", new PinRole.Unused())),
                arguments(
                        Rule.CONTROL_LEFT_OPEN,
                        GOOD.without("source"),
                        GOOD.route("source", null, "12", new Via.Open())),
                arguments(
                        Rule.SUPPLY_NOT_KNOWN,
                        GOOD.synthPin("3", PinRole.Supply.of(-7)).route("odd", null, "3", new Via.Tied(680)),
                        GOOD.synthPin("3", PinRole.Supply.of(-7)).route("odd", null, "3", new Via.Tied(750))),
                arguments(
                        Rule.VALUE_NOT_MADE,
                        GOOD.route("tie-5", null, "9", new Via.Tied(10_200)),
                        GOOD.route("tie-5", null, "9", new Via.Tied(10_200))
                                .parts(new Parts(Series.E96, 1.0, 250.0))
                                .route("level", null, "11", new Via.Divider(2670, 5110, "2", 4.5))
                                .route("source", null, "12", new Via.Divider(46_400, 8060, "2", 1.04))));
    }

    private static ControlLine touching() {
        return new ControlLine(
                "Source", 0, 5, null, List.of(new Band(0, 1.8, "both sounds"), new Band(1.8, 5, "synth alone")));
    }

    private static SampleWiring preamps(SampleWiring sample, Via.Preamp preamp) {
        return sample.route("string-1", "5", "5", preamp)
                .route("string-2", "4", "6", preamp)
                .route("string-3", "3", "7", preamp)
                .route("string-4", "2", "8", preamp);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void each_rule_is_tripped_by_its_wiring_and_not_by_the_near_miss(
            Rule rule, SampleWiring tripping, SampleWiring nearMiss) {
        List<Finding> found = WiringCheck.of(tripping.wiring()).findings();
        assertTrue(codes(found).contains(rule), rule + " missing among " + found);
        List<Finding> spared = WiringCheck.of(nearMiss.wiring()).findings();
        assertFalse(codes(spared).contains(rule), rule + " wrongly among " + spared);
    }

    @Test
    void every_rule_has_a_case() {
        Set<Rule> tested = cases().map(each -> (Rule) each.get()[0])
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Rule.class)));
        tested.add(Rule.DRAWN_FROM_WRONG_SIDE); // has tests of its own below
        assertEquals(EnumSet.allOf(Rule.class), tested);
    }

    @Test
    void positions_noted_from_the_solder_side_are_reported_and_those_from_the_mating_side_are_not() {
        UnaryOperator<Connector> placed = connector -> ring(connector, 1, Side.MATING);
        UnaryOperator<Connector> behind = connector -> ring(connector, 1, Side.SOLDER);
        assertEquals(Set.of(), codes(WiringCheck.of(GOOD.wiring(placed, placed)).findings()));
        assertEquals(
                Set.of(Rule.DRAWN_FROM_WRONG_SIDE),
                codes(WiringCheck.of(GOOD.wiring(placed, behind)).findings()));
    }

    @Test
    void two_connectors_of_one_shape_that_mirror_each_other_are_reported() {
        Map<String, PinRole> same = new LinkedHashMap<>(GOOD.instrumentPins());
        for (int mirror : new int[] {1, -1}) {
            var wiring = Wiring.of(
                    new InstrumentSide(ring(SampleWiring.connector("round", same), 1, Side.MATING), Map.of(), null),
                    new SynthSide(
                            ring(SampleWiring.connector("Round", same), mirror, Side.MATING), null, null, null, null),
                    Adapter.of(Map.of()));
            assertEquals(mirror == -1, codes(WiringCheck.of(wiring).findings()).contains(Rule.DRAWN_FROM_WRONG_SIDE));
        }
    }

    private static Connector ring(Connector connector, int mirror, Side side) {
        Map<String, Pin> pins = new LinkedHashMap<>();
        int index = 0;
        for (var entry : connector.pins().entrySet()) {
            double angle = 2 * Math.PI * (0.3 + index++) / connector.pins().size();
            pins.put(
                    entry.getKey(),
                    new Pin(entry.getValue().role(), mirror * 0.9 * Math.sin(angle), 0.9 * Math.cos(angle), ""));
        }
        return new Connector(connector.shape(), connector.name(), pins, side);
    }

    @Test
    void unsafe_findings_stop_soldering_and_advice_does_not() {
        assertFalse(WiringCheck.of(GOOD.route("odd", "1", "2", WIRE).wiring()).readyToSolder());
        assertTrue(WiringCheck.of(GOOD.without("tie-5").wiring()).readyToSolder());
    }

    @Test
    void a_fault_in_one_position_of_a_switch_is_found_and_names_the_position() {
        Via choice = new Via.Switch(Map.of(
                "both", new Via.Divider(47_000, 8200, "2", 1.04), "full", new Via.Divider(100, 10_000, "2", null)));
        List<Finding> findings = WiringCheck.of(
                        GOOD.route("source", null, "12", choice).wiring())
                .findings();
        Finding range = findings.stream()
                .filter(finding -> finding.code() == Rule.CONTROL_OUT_OF_RANGE)
                .findFirst()
                .orElseThrow();
        assertTrue(range.place().endsWith("switch source at full"), range.place());
    }

    @Test
    void a_switch_between_two_good_dividers_has_no_finding_and_two_voltages() {
        Via choice = new Via.Switch(Map.of(
                "both", new Via.Divider(47_000, 8200, "2", 1.04), "synth", new Via.Divider(10_000, 10_000, "2", 3.5)));
        CheckReport report =
                WiringCheck.of(GOOD.route("source", null, "12", choice).wiring());
        assertEquals(List.of(), report.findings());
        assertEquals(
                Set.of("both sounds", "synth alone", ""),
                report.controls().stream().map(ControlVoltage::meaning).collect(Collectors.toSet()));
    }

    @Test
    void every_finding_has_a_sentence_and_a_remedy() {
        cases().map(each -> (SampleWiring) each.get()[1])
                .flatMap(sample -> WiringCheck.of(sample.wiring()).findings().stream())
                .forEach(finding -> {
                    assertTrue(finding.sentence().endsWith("."), finding.sentence());
                    assertTrue(finding.remedy().endsWith("."), finding.remedy());
                    assertFalse(finding.place().isBlank());
                    assertEquals(finding.code().severity(), finding.severity());
                });
    }

    /** By hand: 7 V over 2.7 k and 5.1 k with 100 k across, 4.4975 V; 7 V x 8.2 / 55.2. */
    @Test
    void control_voltages_and_rail_currents_are_those_worked_out_by_hand() {
        CheckReport report = WiringCheck.of(GOOD.wiring());
        double lower = 5100.0 * 100_000 / 105_100;
        double level = 7 * lower / (lower + 2700);
        assertEquals(level, report.controls().get(0).volts(), 1e-12);
        assertEquals(7 * 8.2 / 55.2, report.controls().get(1).volts(), 1e-12);
        assertEquals("both sounds", report.controls().get(1).meaning());
        double milliamps = (7 - level) / 2.7 + 7 / 55.2;
        assertEquals(milliamps, report.rails().get(0).milliamps(), 1e-9);
        assertEquals(0, report.rails().get(1).milliamps(), 1e-12);
    }

    @Test
    void the_worst_case_takes_rail_and_resistors_together() {
        ControlVoltage source = WiringCheck.of(GOOD.wiring()).controls().get(1);
        assertEquals(7 * 0.95 * 8.2 * 0.99 / (8.2 * 0.99 + 47 * 1.01), source.minVolts(), 1e-12);
        assertEquals(7 * 1.05 * 8.2 * 1.01 / (8.2 * 1.01 + 47 * 0.99), source.maxVolts(), 1e-12);
    }

    @Test
    void preamps_and_what_the_instrument_takes_count_as_current() {
        SampleWiring sample = preamps(GOOD, new Via.Preamp(6, 0.5, null, "2", "3"))
                .instrumentPin("8", new PinRole.Supply(-7, 3.0, null))
                .route("supply", "8", "3", WIRE);
        CheckReport report = WiringCheck.of(sample.wiring());
        double dividers = WiringCheck.of(GOOD.wiring()).rails().get(0).milliamps();
        assertEquals(dividers + 2, report.rails().get(0).milliamps(), 1e-9);
        assertEquals(5, report.rails().get(1).milliamps(), 1e-9);
    }

    private static Set<Rule> codes(List<Finding> findings) {
        return findings.stream().map(Finding::code).collect(Collectors.toSet());
    }
}
