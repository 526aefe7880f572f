package rosinbook.cli;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rosinbook.circuit.DividerChoice;
import rosinbook.circuit.DividerGoal;
import rosinbook.circuit.DividerSearch;
import rosinbook.circuit.ImpossibleDividerException;
import rosinbook.circuit.Series;

/** Finds the two resistors that make a control voltage from a supply rail. */
@Command(
        name = "divider",
        mixinStandardHelpOptions = true,
        description = "Finds the two resistors that make a voltage from a supply rail: every pair of the series from"
                + " 10 ohms to 1 megohm is looked at.")
final class DividerCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Option(names = "--supply", required = true, paramLabel = "VOLTS", description = "the rail, such as 7 or -7")
    private double supplyVolts;

    @Option(names = "--target", required = true, paramLabel = "VOLTS", description = "what the line should get")
    private double targetVolts;

    @Option(names = "--load", paramLabel = "OHMS", description = "resistance of the line to ground; none if left out")
    private Double loadOhms;

    @Option(names = "--series", defaultValue = "E24", description = "E6, E12, E24, E48, E96 or E192; E24 if left out")
    private String series;

    @Option(names = "--tolerance", defaultValue = "1", paramLabel = "PERCENT", description = "of each resistor; 1")
    private double tolerancePercent;

    @Option(names = "--supply-tolerance", defaultValue = "0", paramLabel = "PERCENT", description = "of the rail; 0")
    private double supplyTolerancePercent;

    @Option(names = "--max-milliamps", defaultValue = "1", paramLabel = "MA", description = "budget of the rail; 1")
    private double maxMilliamps;

    @Option(
            names = "--rating-milliwatts",
            defaultValue = "250",
            paramLabel = "MW",
            description = "each resistor's; 250")
    private double ratingMilliwatts;

    @Option(names = "--json", description = "print JSON")
    private boolean json;

    @Override
    public Integer call() {
        try {
            List<DividerChoice> choices = DividerSearch.rank(goal(), 11);
            var answer = new Answer(choices.get(0), choices.subList(1, choices.size()));
            spec.commandLine().getOut().println(json ? Answers.json(answer) : text(choices));
            return 0;
        } catch (IllegalArgumentException | ImpossibleDividerException problem) {
            spec.commandLine().getErr().println("No divider: " + problem.getMessage() + ".");
            return 2;
        }
    }

    private DividerGoal goal() {
        return new DividerGoal(
                supplyVolts,
                targetVolts,
                loadOhms,
                named(series),
                tolerancePercent,
                supplyTolerancePercent,
                maxMilliamps,
                ratingMilliwatts,
                1.0);
    }

    private static Series named(String name) {
        for (Series series : Series.values()) {
            if (series.name().equalsIgnoreCase(name.strip())) {
                return series;
            }
        }
        String shown = name.length() <= 20 ? name : name.substring(0, 20) + "…";
        throw new IllegalArgumentException("series is '" + shown + "'; give E6, E12, E24, E48, E96 or E192");
    }

    private static String text(List<DividerChoice> choices) {
        var text = new StringBuilder(String.format(
                "%12s %12s %10s %10s %10s %10s %10s%n",
                "upper Ω", "lower Ω", "volts", "error", "lowest", "highest", "mA"));
        for (DividerChoice choice : choices) {
            text.append(String.format(
                    Locale.ROOT,
                    "%12s %12s %10.4f %+10.4f %10.4f %10.4f %10.4f%n",
                    plain(choice.upperOhms()),
                    plain(choice.lowerOhms()),
                    choice.volts(),
                    choice.errorVolts(),
                    choice.minVolts(),
                    choice.maxVolts(),
                    choice.milliamps()));
        }
        DividerChoice best = choices.get(0);
        text.append("Best pair: upper ").append(String.join(" ", best.upperBands()));
        text.append("; lower ").append(String.join(" ", best.lowerBands()));
        text.append(String.format("%nSolder with everything switched off and unplugged, and check with a meter."));
        return text.toString();
    }

    private static String plain(double ohms) {
        return BigDecimal.valueOf(ohms).stripTrailingZeros().toPlainString();
    }

    /** What {@code --json} prints. */
    record Answer(DividerChoice best, List<DividerChoice> alternatives) {}
}
