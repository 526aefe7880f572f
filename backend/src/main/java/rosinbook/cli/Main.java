package rosinbook.cli;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import rosinbook.example.NotebookNotEmpty;
import rosinbook.notebook.NoSuchSheet;
import rosinbook.store.ArchiveUnreadable;
import rosinbook.store.DatabaseUnavailable;

/** The one program: every command hangs below it. */
@Command(
        name = "rosinbook",
        mixinStandardHelpOptions = true,
        version = "rosinbook 0.1.0",
        description = "A notebook for players of electric bowed strings whose per-string pickup drives a synthesizer.",
        subcommands = {
            ServeCommand.class,
            ExampleCommand.class,
            DividerCommand.class,
            WiringCommand.class,
            CompareCommand.class,
            ExportCommand.class,
            ImportCommand.class,
            VerifyCommand.class,
            PassphraseCommand.class,
            TakeCommand.class,
            LevelsCommand.class
        })
public final class Main {
    private Main() {}

    /** Runs one command and leaves with its exit status: 0 done, 1 the answer is a warning, 2 the call or its input is wrong. */
    public static void main(String[] args) {
        System.exit(commandLine().execute(args));
    }

    /** The commands, with errors told in a sentence. */
    static CommandLine commandLine() {
        return new CommandLine(new Main()).setExecutionExceptionHandler((problem, command, parsed) -> {
            command.getErr().println(command.getCommandName() + ": " + sentence(problem, command.getErr()));
            return CommandLine.ExitCode.USAGE;
        });
    }

    private static String sentence(Exception problem, PrintWriter details) {
        if (problem instanceof DatabaseUnavailable) {
            return "the notebook cannot be opened: " + problem.getMessage();
        }
        if (problem instanceof IllegalArgumentException
                || problem instanceof NoSuchSheet
                || problem instanceof NotebookNotEmpty
                || problem instanceof ArchiveUnreadable) {
            return problem.getMessage();
        }
        problem.printStackTrace(details);
        return "something went wrong on our side; please report the lines above";
    }
}
