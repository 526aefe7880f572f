package rosinbook.cli;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import rosinbook.circuit.Adapter;
import rosinbook.circuit.BenchSheet;
import rosinbook.circuit.Drawing;
import rosinbook.circuit.Finding;
import rosinbook.circuit.MeterStep;
import rosinbook.circuit.Netlist;
import rosinbook.circuit.PartsList;
import rosinbook.circuit.Side;
import rosinbook.circuit.Wiring;
import rosinbook.circuit.WiringFile;

/** Checks the adapter of a wiring file, or of a rig in an exported notebook, before anybody solders it. */
@Command(
        name = "wiring",
        mixinStandardHelpOptions = true,
        description =
                "Checks an adapter between an instrument and a synth: what is unsafe, what will not work, what each"
                        + " control line gets, what to measure. Proposes an adapter when the file has none.",
        exitCodeListHeading = "Exit status:%n",
        exitCodeList = {"0:nothing unsafe", "1:something is unsafe", "2:the file cannot be read or written"})
final class WiringCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "a wiring file, or the ZIP of an exported notebook")
    private Path file;

    @Option(names = "--rig", paramLabel = "ID[@REVISION]", description = "which rig of the exported notebook")
    private String rig;

    @Option(names = "--netlist", paramLabel = "OUT.cir", description = "write a SPICE netlist")
    private Path netlist;

    @Option(names = "--svg", paramLabel = "OUT.svg", description = "write the drawing")
    private Path svg;

    @Option(names = "--solder-side", description = "draw the connectors from the solder side")
    private boolean solderSide;

    @Option(names = "--parts", paramLabel = "OUT.csv", description = "write the parts list")
    private Path parts;

    @Option(names = "--json", description = "print JSON")
    private boolean json;

    @Override
    public Integer call() {
        try {
            FileToWrite.checkApart(Stream.of(file), Stream.of(netlist, svg, parts));
            return check(WiringFiles.read(file, rig));
        } catch (IOException problem) {
            spec.commandLine().getErr().println(problem.getMessage());
        } catch (IllegalArgumentException problem) {
            spec.commandLine().getErr().println(problem.getMessage() + ".");
        }
        return 2;
    }

    private int check(WiringFile given) throws IOException {
        WiringFile.Worked worked = given.worked();
        Wiring wiring = worked.wiring();
        List<String> remarks = worked.remarks();
        BenchSheet sheet = BenchSheet.of(wiring);
        write(netlist, Netlist.of(wiring));
        write(svg, Drawing.of(wiring, solderSide ? Side.SOLDER : Side.MATING, sheet.findings()));
        write(parts, PartsList.csv(wiring));
        Adapter proposed = worked.isProposed() ? wiring.adapter() : null;
        spec.commandLine()
                .getOut()
                .println(json ? Answers.json(new Answer(sheet, proposed, remarks)) : text(sheet, remarks));
        return sheet.readyToSolder() ? 0 : 1;
    }

    private static void write(Path target, String content) throws IOException {
        if (target == null) {
            return;
        }
        try {
            FileToWrite.write(target, content.getBytes(StandardCharsets.UTF_8));
        } catch (IOException problem) {
            throw new IOException("'" + target.getFileName() + "' cannot be written there.", problem);
        }
    }

    private static String text(BenchSheet sheet, List<String> remarks) {
        var text = new StringBuilder();
        for (Finding finding : sheet.findings()) {
            text.append(String.format(
                    "%-7s %s (%s)%n        %s%n        %s%n",
                    finding.severity().name().toLowerCase(Locale.ROOT),
                    finding.place(),
                    finding.code().code(),
                    finding.sentence(),
                    finding.remedy()));
        }
        remarks.forEach(remark -> text.append(remark).append(System.lineSeparator()));
        sheet.controls()
                .forEach(control -> text.append(String.format(
                        Locale.ROOT,
                        "Pin %s, %s: %.3f V (%.3f to %.3f V) %s%n",
                        control.pin(),
                        control.line(),
                        control.volts(),
                        control.minVolts(),
                        control.maxVolts(),
                        control.meaning())));
        sheet.strings().forEach(string -> text.append(string.sentence()).append(System.lineSeparator()));
        text.append(String.format("Meter plan, %d steps:%n", sheet.meterPlan().size()));
        for (MeterStep step : sheet.meterPlan()) {
            text.append(String.format("%4d [ ] %s%n", step.number(), step.instruction()));
        }
        sheet.verdicts().forEach(verdict -> text.append(verdict.step())
                .append(": ")
                .append(verdict.sentence())
                .append(System.lineSeparator()));
        sheet.cautions().forEach(caution -> text.append(caution).append(System.lineSeparator()));
        return text.append(sheet.readyToSolder() ? "Nothing unsafe found." : "NOT READY TO SOLDER.")
                .toString();
    }

    /** What {@code --json} prints: the sheet's fields, then the adapter when it was proposed, and its remarks. */
    record Answer(@JsonUnwrapped BenchSheet sheet, Adapter proposedAdapter, List<String> remarks) {}
}
