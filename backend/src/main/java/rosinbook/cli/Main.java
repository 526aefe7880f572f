package rosinbook.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The one program: every command hangs below it. */
@Command(
        name = "rosinbook",
        mixinStandardHelpOptions = true,
        version = "rosinbook 0.1.0",
        description = "A notebook for players of electric bowed strings whose per-string pickup drives a synthesizer.",
        subcommands = {LevelsCommand.class})
public final class Main {
    private Main() {}

    /** Runs one command and leaves with its exit status: 0 done, 1 the answer is a warning, 2 the call or its input is wrong. */
    public static void main(String[] args) {
        System.exit(new CommandLine(new Main()).execute(args));
    }
}
