package rosinbook.circuit;

import java.util.List;

/** What every page, sheet and printout of the wiring bench repeats. */
public final class Cautions {
    /** Before soldering or measuring. */
    public static final List<String> BEFORE_SOLDERING = List.of(
            "Switch everything off and unplug it before you join or solder anything.",
            "Check every route twice with a meter before you plug in: continuity, and no connection where none belongs.",
            "Never bridge supply rails, to each other or to ground.",
            "Old instruments may differ from any table, this one included: measure, do not trust.",
            "If you are not sure, ask a qualified technician. Local rules come first.");

    private Cautions() {}
}
