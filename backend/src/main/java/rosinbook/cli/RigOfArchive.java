package rosinbook.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import rosinbook.circuit.WiringFile;
import rosinbook.notebook.Instrument;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Rig;
import rosinbook.notebook.RigWiring;
import rosinbook.notebook.Synth;
import rosinbook.store.ArchiveFile;
import rosinbook.store.ArchiveUnreadable;

/** A rig out of an exported notebook, with the revisions of its instrument and synth that it holds. */
final class RigOfArchive {
    private static final int MOST_LISTED = 20;

    private RigOfArchive() {}

    /**
     * @param wanted {@code id} or {@code id@revision}; null if the archive has only one rig
     * @throws IOException with a sentence for the player when there is no such rig
     */
    static WiringFile read(Path file, String wanted) throws IOException {
        try (ArchiveFile archive = ArchiveFile.open(file)) {
            Rig rig = (Rig) (wanted == null ? onlyRig(archive) : named(archive, wanted)).content();
            return RigWiring.of(rig, (Instrument) part(archive, Kind.INSTRUMENTS, rig.instrument()), (Synth)
                    part(archive, Kind.SYNTHS, rig.synth()));
        } catch (ArchiveUnreadable problem) {
            throw new IOException("'" + file.getFileName() + "': " + problem.getMessage() + ".", problem);
        }
    }

    private static Revision onlyRig(ArchiveFile archive) throws IOException {
        List<Revision> rigs = archive.newest(Kind.RIGS);
        if (rigs.size() == 1) {
            return rigs.get(0);
        }
        throw new IOException(
                rigs.isEmpty()
                        ? "This archive holds no rig."
                        : "This archive holds " + rigs.size() + " rigs; say which with --rig ID or --rig ID@REVISION. "
                                + listed(rigs));
    }

    private static Revision named(ArchiveFile archive, String wanted) throws IOException {
        Reference reference = reference(wanted);
        Revision found = archive.find(Kind.RIGS, reference).orElse(null);
        if (found == null) {
            throw new IOException(
                    "There is no rig " + reference + " in this archive. " + listed(archive.newest(Kind.RIGS)));
        }
        return found;
    }

    private static Reference reference(String wanted) throws IOException {
        String[] parts = wanted.split("@", 2);
        try {
            return new Reference(UUID.fromString(parts[0]), parts.length == 1 ? null : Integer.valueOf(parts[1]));
        } catch (IllegalArgumentException problem) {
            String shown = wanted.length() <= 60 ? wanted : wanted.substring(0, 60) + "…";
            throw new IOException("'" + shown + "' is no rig; give its id, or id@revision.", problem);
        }
    }

    private static String listed(List<Revision> rigs) {
        return "Here are: "
                + rigs.stream()
                        .limit(MOST_LISTED)
                        .map(rig -> rig.sheetId() + " (" + rig.content().title() + ", " + rig.number() + " revisions)")
                        .collect(Collectors.joining("; "))
                + ".";
    }

    private static Object part(ArchiveFile archive, Kind kind, Reference reference) throws IOException {
        return archive.find(kind, reference)
                .orElseThrow(() -> new IOException(
                        "The archive is not whole: the rig's " + kind.singular() + " " + reference + " is missing."))
                .content();
    }
}
