package rosinbook.readout;

import java.util.ArrayList;
import java.util.List;

/** A comparison of two sets in one line. */
final class SetSummary {
    private SetSummary() {}

    static String of(List<SetComparison.RigChanges> rigs, List<SetComparison.PieceChanges> pieces) {
        List<String> parts = new ArrayList<>();
        add(parts, count(pieces, SetComparison.Fate.ADDED), "new in the set", "new in the set");
        add(parts, count(pieces, SetComparison.Fate.DROPPED), "left out", "left out");
        add(parts, pieces.stream().filter(SetComparison.PieceChanges::moved).count(), "moved", "moved");
        add(
                parts,
                pieces.stream().mapToLong(piece -> piece.changes().size()).sum(),
                "change in the sounds",
                "changes in the sounds");
        add(
                parts,
                rigs.stream().mapToLong(rig -> rig.changes().size()).sum(),
                "change on the rig",
                "changes on the rig");
        return parts.isEmpty() ? "Nothing changed" : String.join(", ", parts);
    }

    private static long count(List<SetComparison.PieceChanges> pieces, SetComparison.Fate fate) {
        return pieces.stream().filter(piece -> piece.change() == fate).count();
    }

    private static void add(List<String> parts, long number, String one, String several) {
        if (number > 0) {
            parts.add(number + " " + (number == 1 ? one : several));
        }
    }
}
