package rosinbook.circuit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Proposes an adapter from two connectors: strings to the inputs with the nearest open notes, mixed signal, grounds and
 * equal rails straight across, control lines by dividers, inputs left over tied down.
 */
public final class AdapterProposal {
    private static final double BUDGET_MILLIAMPS = 1;
    private static final double RATING_SHARE = 0.5;

    private final InstrumentSide instrument;
    private final SynthSide synth;
    private final Parts parts;
    private final Map<String, Double> wantedVolts;
    private final Map<String, Route> routes = new LinkedHashMap<>();
    private final List<String> remarks = new ArrayList<>();

    private AdapterProposal(InstrumentSide instrument, SynthSide synth, Parts parts, Map<String, Double> wantedVolts) {
        this.instrument = instrument;
        this.synth = synth;
        this.parts = parts;
        this.wantedVolts = wantedVolts;
    }

    /**
     * Proposes routes for every pin that is known.
     *
     * @param parts resistors to choose from
     * @param wantedVolts what each control line should get, V, by its key; a line left out is left open
     */
    public static Proposal of(
            InstrumentSide instrument, SynthSide synth, Parts parts, Map<String, Double> wantedVolts) {
        var proposal = new AdapterProposal(instrument, synth, parts, Map.copyOf(wantedVolts));
        proposal.joinGrounds();
        proposal.joinStrings();
        proposal.joinMixed();
        proposal.joinSupplies();
        proposal.holdControls();
        return new Proposal(new Adapter(proposal.routes, parts), proposal.remarks);
    }

    private void joinGrounds() {
        Optional<String> ground = pin(synth.connector(), PinRole.Ground.class);
        List<String> grounds = pins(instrument.connector(), PinRole.Ground.class);
        if (ground.isEmpty() || grounds.isEmpty()) {
            remarks.add("No ground pin is known on the " + (ground.isEmpty() ? "synth" : "instrument")
                    + "; find it with a meter before anything else.");
            return;
        }
        grounds.forEach(label -> routes.put("ground-" + label, new Route(label, ground.get(), new Via.Straight())));
    }

    private void joinStrings() {
        List<Integer> strings = StringAssignment.numbers(instrument.connector());
        List<Integer> inputs = StringAssignment.numbers(synth.connector());
        Map<Integer, Integer> assignment =
                StringAssignment.of(strings, inputs, instrument.openNotes(), synth.inputNotes());
        for (int string : strings) {
            String from = stringPin(instrument.connector(), string);
            if (assignment.containsKey(string)) {
                String to = stringPin(synth.connector(), assignment.get(string));
                routes.put("string-" + string, new Route(from, to, new Via.Straight()));
            } else {
                routes.put("string-" + string, new Route(from, null, new Via.Open()));
                remarks.add("String " + string + " finds no input: the instrument has " + strings.size()
                        + " strings and the synth " + inputs.size() + " inputs.");
            }
        }
        for (int input : inputs) {
            if (!assignment.containsValue(input)) {
                String label = stringPin(synth.connector(), input);
                routes.put("tie-" + label, new Route(null, label, new Via.Tied(0)));
            }
        }
    }

    private void joinMixed() {
        Optional<String> from = pin(instrument.connector(), PinRole.Mixed.class);
        Optional<String> to = pin(synth.connector(), PinRole.Mixed.class);
        if (from.isPresent() && to.isPresent()) {
            routes.put("mixed", new Route(from.get(), to.get(), new Via.Straight()));
        } else if (to.isPresent()) {
            remarks.add("The synth takes a mixed signal and the instrument gives none that is known; the straight sound"
                    + " will be silent unless its strings are joined there through one resistor each.");
        }
    }

    private void joinSupplies() {
        for (String label : pins(instrument.connector(), PinRole.Supply.class)) {
            double volts = ((PinRole.Supply) role(instrument.connector(), label)).volts();
            Optional<String> rail = pins(synth.connector(), PinRole.Supply.class).stream()
                    .filter(pin -> Math.abs(railVolts(pin) - volts) <= 0.05 * Math.abs(volts))
                    .findFirst();
            rail.ifPresentOrElse(
                    pin -> routes.put("supply-" + label, new Route(label, pin, new Via.Straight())),
                    () -> remarks.add("Instrument pin " + label + " wants " + Figures.volts(volts)
                            + ", which no known pin of the synth gives; it is left open."));
        }
    }

    private void holdControls() {
        synth.connector().pins().forEach((label, pin) -> {
            String line = new Contact(Plug.SYNTH, label, pin.role()).line();
            if (line == null) {
                return;
            }
            Optional<String> own = instrument.connector().pins().entrySet().stream()
                    .filter(entry -> line.equals(new Contact(
                                    Plug.INSTRUMENT,
                                    entry.getKey(),
                                    entry.getValue().role())
                            .line()))
                    .map(Map.Entry::getKey)
                    .findFirst();
            routes.put(
                    "control-" + label,
                    own.map(from -> new Route(from, label, new Via.Straight()))
                            .orElseGet(() -> new Route(null, label, held(label, line))));
        });
        wantedVolts.keySet().stream()
                .filter(line -> synth.connector().pins().entrySet().stream()
                        .noneMatch(entry -> line.equals(new Contact(
                                        Plug.SYNTH,
                                        entry.getKey(),
                                        entry.getValue().role())
                                .line())))
                .forEach(line -> remarks.add("No pin of the synth belongs to the line '" + line + "'."));
    }

    private Via held(String label, String line) {
        Double target = wantedVolts.get(line);
        if (target == null) {
            remarks.add("Control line " + line + " (synth pin " + label
                    + ") is left open; say which voltage it should get for a divider.");
            return new Via.Open();
        }
        if (target == 0) {
            return new Via.Tied(0);
        }
        Optional<String> rail = pins(synth.connector(), PinRole.Supply.class).stream()
                .filter(pin -> railVolts(pin) * target > 0 && Math.abs(railVolts(pin)) > Math.abs(target))
                .min(Comparator.comparingDouble(pin -> Math.abs(railVolts(pin))));
        if (rail.isEmpty()) {
            remarks.add("No supply rail of the synth lies beyond the " + Figures.volts(target) + " that line " + line
                    + " should get; it is left open.");
            return new Via.Open();
        }
        return divider(rail.get(), line, target);
    }

    private Via divider(String rail, String line, double target) {
        ControlLine described = synth.controlLines().get(line);
        var supply = (PinRole.Supply) role(synth.connector(), rail);
        double budget =
                supply.maxMilliamps() == null ? BUDGET_MILLIAMPS : Math.min(BUDGET_MILLIAMPS, supply.maxMilliamps());
        var goal = new DividerGoal(
                supply.volts(),
                target,
                described == null ? null : described.loadOhms(),
                parts.series(),
                parts.tolerancePercent(),
                100 * Insides.railShare(supply),
                budget,
                parts.ratingMilliwatts(),
                RATING_SHARE);
        try {
            List<DividerChoice> choices = DividerSearch.rank(goal, 50);
            DividerChoice choice = choices.stream()
                    .filter(pair -> described == null
                            || pair.volts() >= described.minVolts() && pair.volts() <= described.maxVolts())
                    .findFirst()
                    .orElse(choices.get(0));
            return new Via.Divider(choice.upperOhms(), choice.lowerOhms(), rail, target);
        } catch (ImpossibleDividerException problem) {
            remarks.add("Line " + line + " is left open: " + problem.getMessage() + ".");
            return new Via.Open();
        }
    }

    private double railVolts(String label) {
        return ((PinRole.Supply) role(synth.connector(), label)).volts();
    }

    private static PinRole role(Connector connector, String label) {
        return connector.pins().get(label).role();
    }

    private static String stringPin(Connector connector, int string) {
        return connector.pins().entrySet().stream()
                .filter(entry -> entry.getValue().role().equals(new PinRole.StringSignal(string)))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow();
    }

    private static Optional<String> pin(Connector connector, Class<? extends PinRole> role) {
        return pins(connector, role).stream().findFirst();
    }

    private static List<String> pins(Connector connector, Class<? extends PinRole> role) {
        return connector.pins().entrySet().stream()
                .filter(entry -> role.isInstance(entry.getValue().role()))
                .map(Map.Entry::getKey)
                .toList();
    }
}
