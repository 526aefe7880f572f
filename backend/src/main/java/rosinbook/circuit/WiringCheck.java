package rosinbook.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Checks an adapter between its two connectors, in every setting of its switches. */
public final class WiringCheck {
    private WiringCheck() {}

    /**
     * Applies every {@link Rule} and computes what the adapter does with both ends plugged in and powered.
     *
     * @return never null; an adapter without routes has findings too
     */
    public static CheckReport of(Wiring wiring) {
        var findings = new Findings();
        List<ControlVoltage> controls = new ArrayList<>();
        Map<String, RailLoad> rails = new LinkedHashMap<>();
        List<Map<String, String>> states = SwitchStates.of(wiring.adapter());
        for (Map<String, String> state : states) {
            var plugged = new Plugged(wiring, state);
            findings.begin(SwitchStates.describe(state));
            PlainRules.check(wiring, findings);
            SupplyRules.check(plugged, findings);
            LoadRules.check(plugged, findings);
            SignalRules.check(plugged, findings);
            ControlRules.check(plugged, findings);
            addControls(plugged, SwitchStates.describe(state), controls);
            addRails(plugged, rails);
        }
        List<Finding> list = findings.list();
        boolean ready = list.stream().noneMatch(finding -> finding.severity() == Severity.UNSAFE);
        return new CheckReport(
                ready, list, controls, List.copyOf(rails.values()), SoundSide.of(wiring), Cautions.BEFORE_SOLDERING);
    }

    private static void addControls(Plugged plugged, String switches, List<ControlVoltage> controls) {
        for (Contact contact : plugged.contacts) {
            double volts = plugged.volts(contact);
            ControlLine line = contact.line() == null
                    ? null
                    : plugged.wiring.synth().controlLines().get(contact.line());
            boolean held = contact.isSynths()
                    && contact.isControl()
                    && !plugged.routesAt(contact).isEmpty();
            if (!held || Double.isNaN(volts) || ControlRules.isSetByInstrument(plugged, contact)) {
                continue;
            }
            WorstCase worst = plugged.worstCase(contact);
            Band band = line == null ? null : ControlRules.band(line, volts);
            var found = new ControlVoltage(
                    contact.label(),
                    contact.line(),
                    switches,
                    volts,
                    worst.minVolts(),
                    worst.maxVolts(),
                    band == null ? "" : band.meaning());
            boolean known = controls.stream()
                    .anyMatch(other -> other.pin().equals(found.pin()) && other.volts() == found.volts());
            if (!known) {
                controls.add(found);
            }
        }
    }

    private static void addRails(Plugged plugged, Map<String, RailLoad> rails) {
        for (Contact contact : plugged.contacts) {
            if (contact.isSynths() && contact.role() instanceof PinRole.Supply supply) {
                var load = new RailLoad(
                        contact.label(), supply.volts(), LoadRules.milliamps(plugged, contact), supply.maxMilliamps());
                rails.merge(contact.label(), load, (a, b) -> a.milliamps() >= b.milliamps() ? a : b);
            }
        }
    }
}
