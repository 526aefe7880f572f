package rosinbook.circuit;

import java.util.List;

/**
 * Everything the check of a wiring found and computed.
 *
 * @param readyToSolder whether nothing unsafe was found
 * @param findings gravest first; empty when there is nothing to say
 * @param controls the voltage of each control pin the adapter holds, for each setting of the switches that matters
 * @param rails what each supply rail of the synth must give, at most, over all settings of the switches
 * @param strings what to expect of each string's sound; empty when the pickup is not known
 * @param cautions what to heed with a soldering iron or a meter in the hand
 */
public record CheckReport(
        boolean readyToSolder,
        List<Finding> findings,
        List<ControlVoltage> controls,
        List<RailLoad> rails,
        List<StringOutlook> strings,
        List<String> cautions) {
    /** Copies the lists. */
    public CheckReport {
        findings = List.copyOf(findings);
        controls = List.copyOf(controls);
        rails = List.copyOf(rails);
        strings = List.copyOf(strings);
        cautions = List.copyOf(cautions);
    }
}
