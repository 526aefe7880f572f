package rosinbook.circuit;

import java.util.List;

/**
 * Everything the bench knows of a wiring, ready to be shown, printed or written as JSON.
 *
 * @param readyToSolder whether nothing unsafe was found
 * @param findings gravest first
 * @param controls what each control pin gets
 * @param rails what each rail must give
 * @param strings what to expect of each string's sound; empty when the pickup is not known
 * @param parts what to buy
 * @param meterPlan what to measure, in order
 * @param verdicts on the readings the wiring has so far
 * @param cautions to be shown with all of it
 */
public record BenchSheet(
        boolean readyToSolder,
        List<Finding> findings,
        List<ControlVoltage> controls,
        List<RailLoad> rails,
        List<StringOutlook> strings,
        List<PartsList.Part> parts,
        List<MeterStep> meterPlan,
        List<MeterVerdict> verdicts,
        List<String> cautions) {
    /** Copies the lists. */
    public BenchSheet {
        findings = List.copyOf(findings);
        controls = List.copyOf(controls);
        rails = List.copyOf(rails);
        strings = List.copyOf(strings);
        parts = List.copyOf(parts);
        meterPlan = List.copyOf(meterPlan);
        verdicts = List.copyOf(verdicts);
        cautions = List.copyOf(cautions);
    }

    /** Checks, computes and plans a wiring. */
    public static BenchSheet of(Wiring wiring) {
        CheckReport report = WiringCheck.of(wiring);
        return new BenchSheet(
                report.readyToSolder(),
                report.findings(),
                report.controls(),
                report.rails(),
                report.strings(),
                PartsList.of(wiring),
                MeterPlan.of(wiring).steps(),
                Diagnosis.of(wiring),
                report.cautions());
    }
}
