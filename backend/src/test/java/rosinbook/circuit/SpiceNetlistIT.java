package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.testing.Needs;

/** Our nodal solver against ngspice (Debian package ngspice), a general-purpose circuit simulator. */
class SpiceNetlistIT {
    private static final int ADAPTERS = 200;
    private static final Pattern NODE = Pattern.compile("(?i)^\\s*V\\((\\d+)\\)\\s+(\\S+)\\s*$", Pattern.MULTILINE);
    private static final Pattern BRANCH = Pattern.compile("(?i)^\\s*(v\\d+)#branch\\s+(\\S+)\\s*$", Pattern.MULTILINE);

    @TempDir
    private Path folder;

    @BeforeAll
    static void ngspice_is_there() {
        Needs.program("ngspice", "ngspice");
    }

    @Test
    void voltages_and_currents_of_random_adapters_agree_with_ngspice() throws Exception {
        Random random = new Random(200);
        int compared = 0;
        int loaded = 0;
        for (int round = 0; round < ADAPTERS; round++) {
            Wiring wiring = random(random);
            String netlist = Netlist.of(wiring);
            String printed = run(netlist, round);
            var plugged = new Plugged(wiring, Map.of());
            Map<Integer, Double> volts = volts(printed);
            for (Contact contact : plugged.contacts) {
                double ours = plugged.volts(contact);
                if (!Double.isNaN(ours)) {
                    int node = Netlist.node(wiring, contact.plug(), contact.label());
                    double theirs = node == 0 ? 0 : volts.get(node);
                    assertEquals(theirs, ours, 1e-4 * Math.abs(theirs) + 1e-9, contact.describe() + "\n" + netlist);
                    compared++;
                }
            }
            int source = 0;
            Matcher branch = BRANCH.matcher(printed);
            List<Contact> rails = plugged.contacts.stream()
                    .filter(contact -> contact.isSynths() && contact.isSupply())
                    .toList();
            while (source < rails.size() && branch.find()) {
                double theirs = 1000 * Math.abs(Double.parseDouble(branch.group(2)));
                double ours = LoadRules.milliamps(plugged, rails.get(source++));
                assertEquals(theirs, ours, 1e-4 * theirs + 1e-7, netlist);
                loaded += ours > 0.001 ? 1 : 0;
            }
            assertEquals(rails.size(), source);
        }
        assertTrue(compared > 10 * ADAPTERS, compared + " voltages compared");
        assertTrue(loaded > ADAPTERS / 2, loaded + " loaded rails compared");
    }

    @Test
    void a_rail_shorted_to_ground_still_runs() throws Exception {
        Wiring wiring = SampleWiring.good()
                .route("odd", "1", "2", new Via.Straight())
                .route("even", "8", "2", new Via.Straight())
                .route("third", "8", "3", new Via.Straight())
                .wiring();
        String netlist = Netlist.of(wiring);
        assertTrue(netlist.contains("* left out, because it is joined to ground"), netlist);
        assertTrue(volts(run(netlist, 0)).size() > 5);
    }

    /** Gain and high-pass against {@link PiezoSource}: the mixed input gets nothing, input 4 its string through the corner. */
    @Test
    void the_high_pass_of_a_string_agrees_with_ngspices_sweep() throws Exception {
        String netlist = Netlist.of(SampleWiring.good().wiring());
        int node = Netlist.node(SampleWiring.good().wiring(), Plug.SYNTH, "8");
        String printed =
                run(netlist.replace(".op\n", "").replaceAll("(?m)^\\.print (?!ac vdb\\(" + node + "\\)$).*\\R", ""), 1);
        Matcher row =
                Pattern.compile("(?m)^\\d+\\s+(\\d\\S+)\\s+(-?\\d\\S+)\\s*$").matcher(printed);
        var source = new PiezoSource(500e-12, 0, 1e6);
        int rows = 0;
        while (row.find()) {
            double hertz = Double.parseDouble(row.group(1));
            assertEquals(source.cornerDecibels(hertz), Double.parseDouble(row.group(2)), 0.01, hertz + " Hz");
            rows++;
        }
        assertTrue(rows > 50, printed);
    }

    private static Wiring random(Random random) {
        SampleWiring sample = SampleWiring.good()
                .synthPin("2", new PinRole.Supply(3 + 12 * random.nextDouble(), null, null))
                .synthPin("3", new PinRole.Supply(-3 - 12 * random.nextDouble(), null, null))
                .instrumentPin("8", random.nextBoolean() ? new PinRole.Unused() : new PinRole.StringSignal(5));
        for (String line : List.of("level", "source")) {
            Double load = random.nextInt(3) == 0 ? null : ohms(random);
            sample = sample.line(line, new ControlLine(line, -20, 20, load, List.of()));
            sample = sample.route(line, null, line.equals("level") ? "11" : "12", divider(random));
        }
        Map<String, String> pins = new LinkedHashMap<>(Map.of("string-1", "5", "string-2", "4", "string-3", "3"));
        for (var string : pins.entrySet()) {
            String to = String.valueOf(5 + random.nextInt(6));
            Via via = random.nextInt(3) == 0
                    ? new Via.Preamp(6, random.nextDouble(), 1e6, random.nextBoolean() ? "2" : "3", null)
                    : random.nextBoolean() ? new Via.Resistor(ohms(random)) : new Via.Straight();
            sample = sample.route(string.getKey(), string.getValue(), to, via);
        }
        int extras = random.nextInt(5);
        for (int extra = 0; extra < extras; extra++) {
            String pin = String.valueOf(4 + random.nextInt(10));
            Via via = random.nextBoolean() ? divider(random) : new Via.Tied(random.nextBoolean() ? 0 : ohms(random));
            sample = sample.route("extra-" + extra, null, pin, via);
        }
        return sample.wiring();
    }

    private static Via divider(Random random) {
        return new Via.Divider(ohms(random), ohms(random), random.nextBoolean() ? "2" : "3", null);
    }

    private static double ohms(Random random) {
        double[] values = Series.E96.ohms();
        return values[96 + random.nextInt(values.length - 96)];
    }

    private static Map<Integer, Double> volts(String printed) {
        Map<Integer, Double> volts = new LinkedHashMap<>();
        Matcher node = NODE.matcher(printed);
        while (node.find()) {
            volts.put(Integer.valueOf(node.group(1)), Double.valueOf(node.group(2)));
        }
        return volts;
    }

    private String run(String netlist, int number) throws Exception {
        Path file = folder.resolve(String.format(Locale.ROOT, "adapter-%d.cir", number));
        Path log = folder.resolve(number + ".log");
        Files.writeString(file, netlist);
        Process process = new ProcessBuilder("ngspice", "-b", file.toString())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        assertTrue(process.waitFor(20, TimeUnit.SECONDS), "ngspice hangs");
        String printed = Files.readString(log);
        assertEquals(0, process.exitValue(), printed + netlist);
        return printed;
    }
}
