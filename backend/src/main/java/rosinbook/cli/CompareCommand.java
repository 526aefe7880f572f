package rosinbook.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.time.Clock;
import java.util.UUID;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Setlist;
import rosinbook.readout.ReadableChange;
import rosinbook.readout.SetComparison;
import rosinbook.store.Database;

/** {@code rosinbook compare}. */
@Command(name = "compare", mixinStandardHelpOptions = true, description = "Tells what changed from one set to another.")
final class CompareCommand implements Callable<Integer> {
    @Mixin
    private DatabaseOptions options;

    @Mixin
    private NotebookOptions notebooks;

    @Parameters(index = "0", paramLabel = "WAS", description = "The older set: its id, or id@revision.")
    private String was;

    @Parameters(index = "1", paramLabel = "NOW", description = "The newer set: its id, or id@revision.")
    private String now;

    @Option(names = "--all", description = "Tell what stayed the same too.")
    private boolean all;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Override
    public Integer call() throws JsonProcessingException {
        try (Database database = options.openExisting()) {
            Notebook notebook = notebooks.notebook(database, Clock.systemUTC());
            SetComparison comparison =
                    notebook.look(pages -> SetComparison.of(pages, set(pages, was), set(pages, now), all));
            System.out.println(json ? ContentJson.strict().writeValueAsString(comparison) : text(comparison));
            return 0;
        }
    }

    private static Setlist set(Pages pages, String text) {
        Revision revision = Notebook.find(pages, Kind.SETLISTS, reference(text));
        return (Setlist) revision.content();
    }

    private static Reference reference(String text) {
        String[] parts = text.split("@", 2);
        try {
            return new Reference(UUID.fromString(parts[0]), parts.length == 1 ? null : Integer.valueOf(parts[1]));
        } catch (IllegalArgumentException problem) {
            throw new IllegalArgumentException("'" + text + "' is no set; give its id, or id@revision");
        }
    }

    private static String text(SetComparison comparison) {
        StringBuilder text = new StringBuilder(comparison.summary()).append('\n');
        for (SetComparison.RigChanges rig : comparison.rig()) {
            text.append('\n').append(rig.title()).append('\n');
            rig.changes().forEach(change -> line(text, change));
        }
        for (SetComparison.PieceChanges piece : comparison.pieces()) {
            text.append('\n').append(piece.title()).append(fate(piece)).append('\n');
            piece.changes().forEach(change -> line(text, change));
        }
        return text.toString();
    }

    private static void line(StringBuilder text, ReadableChange change) {
        text.append("  ").append(change.sentence()).append('\n');
    }

    private static String fate(SetComparison.PieceChanges piece) {
        return switch (piece.change()) {
            case ADDED -> ": new in the set";
            case DROPPED -> ": left out";
            case KEPT ->
                piece.moved() ? ": moved from place " + piece.wasPosition() + " to " + piece.nowPosition() : "";
        };
    }
}
