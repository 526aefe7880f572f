package rosinbook.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import rosinbook.example.NotebookNotEmpty;
import rosinbook.log.Logs;
import rosinbook.notebook.NoSuchSheet;
import rosinbook.store.ArchiveUnreadable;
import rosinbook.store.BackupUnreadable;
import rosinbook.store.CannotWrite;
import rosinbook.store.DatabaseBusy;
import rosinbook.store.DatabaseDamaged;
import rosinbook.store.DatabaseUnavailable;
import rosinbook.store.RevisionDamaged;

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
            BackupCommand.class,
            RestoreCommand.class,
            PassphraseCommand.class,
            LicencesCommand.class,
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
            command.getErr().println(command.getCommandName() + ": " + sentence(problem, command));
            return CommandLine.ExitCode.USAGE;
        });
    }

    private static String sentence(Exception problem, CommandLine command) {
        if (problem instanceof DatabaseDamaged damaged) {
            return RestoreAdvice.sentence(damaged, command);
        }
        if (problem instanceof DatabaseUnavailable) {
            return "the notebook cannot be opened: " + problem.getMessage();
        }
        if (problem instanceof IOException file && !(problem instanceof JsonProcessingException)) {
            return sentence(file);
        }
        if (problem instanceof IllegalArgumentException
                || problem instanceof NoSuchSheet
                || problem instanceof NotebookNotEmpty
                || problem instanceof ArchiveUnreadable
                || problem instanceof BackupUnreadable
                || problem instanceof CannotWrite
                || problem instanceof RevisionDamaged
                || problem instanceof DatabaseBusy) {
            return problem.getMessage();
        }
        command.getErr().print(Logs.trace(problem));
        return "something went wrong on our side; please report the lines above";
    }

    private static String sentence(IOException problem) {
        if (problem instanceof NoSuchFileException missing) {
            return missing.getFile() + " is not there; check its name";
        }
        if (problem instanceof AccessDeniedException refused) {
            return refused.getFile() + " cannot be read or written; it may belong to somebody else";
        }
        return problem instanceof FileSystemException
                ? problem.getMessage()
                : "a file cannot be read or written: " + problem.getMessage();
    }
}
