package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rosinbook.pitch.Note;

class AdapterProposalTest {
    private static final List<Integer> SIX = List.of(1, 2, 3, 4, 5, 6);

    /** Distances in semitones to the guitar's E4 B3 G3 D3 A2 E2, added up by hand. */
    @ParameterizedTest
    @CsvSource({
        "E5 A4 D4 G3, 1 2 3 4",
        "A4 D4 G3 C3, 1 2 3 4",
        "A3 D3 G2 C2, 2 4 5 6",
        "E5 A4 D4 G3 C3, 1 2 3 4 5",
        "E5 A4 D4 G3 C3 F2, 1 2 3 4 5 6"
    })
    void strings_go_to_the_inputs_with_the_nearest_open_notes(String notes, String inputs) {
        Map<Integer, Note> open = notes(notes);
        List<Integer> expected =
                Arrays.stream(inputs.split(" ")).map(Integer::valueOf).toList();
        var assignment = StringAssignment.of(List.copyOf(open.keySet()), SIX, open, Map.of());
        assertEquals(expected, List.copyOf(assignment.values()), assignment.toString());
    }

    /** Against every way to choose inputs, in order, counted out. */
    @Test
    void no_other_assignment_in_order_has_fewer_semitones() {
        Random random = new Random(7);
        for (int round = 0; round < 200; round++) {
            int count = 1 + random.nextInt(7);
            Map<Integer, Note> open = new LinkedHashMap<>();
            for (int string = 1; string <= count; string++) {
                open.put(string, new Note(28 + random.nextInt(60)));
            }
            List<Integer> inputNotes = List.of(64, 59, 55, 50, 45, 40);
            var assignment = StringAssignment.of(List.copyOf(open.keySet()), SIX, open, Map.of());
            assertEquals(Math.min(count, 6), assignment.size());
            int cost = assignment.entrySet().stream()
                    .mapToInt(entry -> Math.abs(open.get(entry.getKey()).midi() - inputNotes.get(entry.getValue() - 1)))
                    .sum();
            assertEquals(cheapest(List.copyOf(open.values()), inputNotes, 0, 0, Math.min(count, 6)), cost);
        }
    }

    private static int cheapest(List<Note> notes, List<Integer> inputs, int string, int input, int left) {
        if (left == 0) {
            return 0;
        }
        int best = 1_000_000;
        for (int i = string; i < notes.size(); i++) {
            for (int j = input; j < inputs.size(); j++) {
                int cost = Math.abs(notes.get(i).midi() - inputs.get(j));
                best = Math.min(best, cost + cheapest(notes, inputs, i + 1, j + 1, left - 1));
            }
        }
        return best;
    }

    @Test
    void a_proposal_from_the_sample_pins_passes_the_check_but_for_what_is_left_open() {
        Wiring sample = SampleWiring.good().wiring();
        Proposal proposal = AdapterProposal.of(
                sample.instrument(), sample.synth(), Parts.USUAL, Map.of("level", 4.5, "source", 1.04));
        CheckReport report = WiringCheck.of(sample.with(proposal.adapter()));
        assertEquals(List.of(), report.findings());
        assertEquals(List.of(), proposal.remarks());
        assertEquals(
                new Route(null, "12", new Via.Divider(47_000, 8200, "2", 1.04)),
                proposal.adapter().routes().get("control-12"));
        assertEquals(
                new Route(null, "9", new Via.Tied(0)),
                proposal.adapter().routes().get("tie-9"));
    }

    @Test
    void a_level_held_at_the_top_of_its_range_never_passes_it_nominally() {
        Wiring sample = SampleWiring.good().wiring();
        Proposal proposal = AdapterProposal.of(sample.instrument(), sample.synth(), Parts.USUAL, Map.of("level", 5.0));
        CheckReport report = WiringCheck.of(sample.with(proposal.adapter()));
        assertTrue(report.readyToSolder(), report.findings().toString());
        assertEquals(5, report.controls().get(0).volts(), 0.05);
        assertTrue(report.controls().get(0).volts() <= 5);
    }

    @Test
    void seven_strings_into_six_inputs_leave_one_open_and_say_so() {
        SampleWiring sample = SampleWiring.good();
        Map<String, PinRole> pins = new LinkedHashMap<>();
        pins.put("g", new PinRole.Ground());
        IntStream.rangeClosed(1, 7).forEach(n -> pins.put("s" + n, new PinRole.StringSignal(n)));
        var instrument = new InstrumentSide(SampleWiring.connector("", pins), notes("E5 A4 D4 G3 C3 F2 Bb1"), null);
        Proposal proposal = AdapterProposal.of(instrument, sample.wiring().synth(), Parts.USUAL, Map.of());
        assertTrue(
                proposal.remarks().stream()
                        .anyMatch(remark -> remark.startsWith("String 1 finds no input")
                                || remark.startsWith("String 7 finds no input")),
                proposal.remarks().toString());
        assertTrue(proposal.remarks().stream().anyMatch(remark -> remark.contains("mixed signal")));
        CheckReport report =
                WiringCheck.of(Wiring.of(instrument, sample.wiring().synth(), proposal.adapter()));
        assertTrue(report.readyToSolder(), report.findings().toString());
        assertFalse(report.findings().stream().anyMatch(finding -> finding.code() == Rule.STRING_WITHOUT_INPUT));
    }

    @Test
    void a_line_the_instrument_drives_is_joined_and_one_without_a_wanted_voltage_is_left_open() {
        Wiring sample = SampleWiring.good()
                .instrumentPin("8", new PinRole.Control("level"))
                .wiring();
        Proposal proposal = AdapterProposal.of(sample.instrument(), sample.synth(), Parts.USUAL, Map.of());
        assertEquals(
                new Route("8", "11", new Via.Straight()),
                proposal.adapter().routes().get("control-11"));
        assertEquals(
                new Route(null, "12", new Via.Open()),
                proposal.adapter().routes().get("control-12"));
        assertTrue(
                proposal.remarks().get(0).contains("say which voltage"),
                proposal.remarks().toString());
    }

    @Test
    void a_voltage_beyond_every_rail_is_left_open_with_a_remark() {
        Wiring sample = SampleWiring.good().wiring();
        Proposal proposal = AdapterProposal.of(sample.instrument(), sample.synth(), Parts.USUAL, Map.of("level", 9.0));
        assertEquals(
                new Via.Open(), proposal.adapter().routes().get("control-11").via());
        assertTrue(
                proposal.remarks().stream().anyMatch(remark -> remark.contains("beyond the 9 V")),
                proposal.remarks().toString());
    }

    private static Map<Integer, Note> notes(String names) {
        Map<Integer, Note> notes = new LinkedHashMap<>();
        for (String name : names.split(" ")) {
            notes.put(notes.size() + 1, Note.parse(name));
        }
        return notes;
    }
}
