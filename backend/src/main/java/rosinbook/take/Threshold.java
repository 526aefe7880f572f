package rosinbook.take;

/**
 * Every figure a finding rests on. Most are weights of evidence: natural logarithms of odds, added up; a fault is found when the
 * sum is above 0. A weight of 2.3 makes something ten times as likely.
 *
 * <p>The defaults were set on bowed takes with known truth, tracked by a general-purpose pitch tracker; no source beyond that.
 */
public enum Threshold {
    /** Two notes of a string belong together up to this gap. */
    TOUCHING(
            "Notes touch", "seconds between two notes of a string that follow on directly", Unit.SECONDS, 0.04, 0, 0.2),
    /** A gap shorter than this is none. */
    NO_GAP("No gap", "a gap shorter than this counts as none at all", Unit.SECONDS, 0.012, 0, 0.05),
    /** Reach of the fingerboard above the open string. */
    FINGERBOARD("Fingerboard", "semitones above the open string a finger can reach", Unit.SEMITONES, 31, 7, 48),

    /** Ghost: before anything is known. */
    GHOST_START("Ghost: at first", "odds that a note is a ghost before looking", Unit.EVIDENCE, -5.6, -12, 0),
    /** Ghost: same pitch. */
    GHOST_SAME_PITCH("Ghost: same pitch", "another string sounds the same note", Unit.EVIDENCE, 3.6, 0, 8),
    /** Ghost: octave, twelfth, two octaves. */
    GHOST_HARMONIC(
            "Ghost: harmonic", "another string sounds an octave, twelfth or two octaves away", Unit.EVIDENCE, 1, 0, 6),
    /** Ghost: for each ten steps of velocity quieter. */
    GHOST_QUIETER("Ghost: quieter", "for each 10 of velocity below the other string", Unit.EVIDENCE, 1.7, 0, 4),
    /** Ghost: covered in time. */
    GHOST_COVERED("Ghost: covered", "the other string sounds all along", Unit.EVIDENCE, 0.5, 0, 4),
    /** Ghost: not covered in time. */
    GHOST_UNCOVERED("Ghost: uncovered", "the other string sounds for less than half of it", Unit.EVIDENCE, -1.5, -6, 0),
    /** Ghost: starts before its source. */
    GHOST_BEFORE("Ghost: before", "it starts well before the other string", Unit.EVIDENCE, -2, -6, 0),
    /** Ghost: starts after its source. */
    GHOST_AFTER("Ghost: after", "it starts while the other string already sounds", Unit.EVIDENCE, 0.7, 0, 4),
    /** Ghost: starts with its source, and about as loud. */
    GHOST_TOGETHER("Ghost: together", "both start at once and about as loud: a unison", Unit.EVIDENCE, -1, -6, 0),
    /** Ghost: about as loud. */
    GHOST_AS_LOUD("As loud", "velocities no further apart count as about as loud", Unit.VELOCITY, 12, 0, 60),
    /** Ghost: short. */
    GHOST_SHORT("Ghost: short", "it is shorter than the short ghost", Unit.EVIDENCE, 0.3, 0, 4),
    /** How short a short ghost is. */
    GHOST_SHORT_SECONDS("Short ghost", "how short a short ghost is", Unit.SECONDS, 0.12, 0, 1),
    /** Ghost: another pitch, but no flicker. */
    GHOST_ODD_PITCH("Ghost: odd pitch", "no pitch relation, and more than a flicker", Unit.EVIDENCE, -1.3, -6, 0),
    /** Ghost: another pitch, and long. */
    GHOST_ODD_LONG("Ghost: odd and long", "no pitch relation, and a long note", Unit.EVIDENCE, -1.5, -6, 0),
    /** How long a long note of no relation is. */
    GHOST_LONG_SECONDS("Long ghost", "how long a long one is", Unit.SECONDS, 0.25, 0, 2),
    /** Ghost: the string rings on. */
    GHOST_RINGING(
            "Ghost: ringing on",
            "the string's own last note, much quieter, while another is bowed",
            Unit.EVIDENCE,
            2.5,
            0,
            6),
    /** Ghost: how much quieter a string rings on. */
    GHOST_RINGING_QUIETER(
            "Ringing on", "how much quieter a string that rings on is, in velocity", Unit.VELOCITY, 15, 0, 60),

    /** Blip: before anything is known. */
    BLIP_START("Blip: at first", "odds that a note is a blip before looking", Unit.EVIDENCE, -3, -10, 0),
    /** Blip: how short a flicker is. */
    BLIP_FLICKER_SECONDS("Flicker", "a note this short is hardly played", Unit.SECONDS, 0.06, 0, 0.2),
    /** Blip: a flicker. */
    BLIP_FLICKER("Blip: flicker", "it is no longer than a flicker", Unit.EVIDENCE, 3, 0, 8),
    /** Blip: a harmonic of the note it interrupts. */
    BLIP_HARMONIC("Blip: harmonic", "an octave, twelfth or two octaves from its neighbour", Unit.EVIDENCE, 1.5, 0, 6),
    /** Blip: the take's habit. */
    BLIP_HABIT(
            "Blip: habit",
            "for each doubling of how often this string flickers so in this take",
            Unit.EVIDENCE,
            0.8,
            0,
            3),
    /** Blip: the note goes on without a gap. */
    BLIP_CLOSE_GAP("Blip: close", "the note goes on after it without a gap", Unit.EVIDENCE, 0.5, 0, 4),
    /** Blip: a lower note inside, not short enough. */
    BLIP_LOWER("Blip: lower", "it lies below the note it interrupts", Unit.EVIDENCE, -2, -6, 0),
    /** Blip: at an edge. */
    BLIP_EDGE("Blip: at an edge", "it stands at a start or an end, not inside", Unit.EVIDENCE, -0.2, -4, 4),
    /** Blip: a neighbouring tone. */
    BLIP_NEIGHBOUR(
            "Blip: neighbouring tone",
            "a step from its note: against it if it is long, for it if it is very short",
            Unit.EVIDENCE,
            1,
            0,
            6),
    /** Blip: how much a note has faded. */
    BLIP_FADED("Faded", "how much quieter than its note a last flicker is, in velocity", Unit.VELOCITY, 20, 0, 60),
    /** How short a scratch of any pitch is. */
    BLIP_SCRATCH_SECONDS("Scratch", "a scratch of any pitch at a start or end", Unit.SECONDS, 0.035, 0, 0.1),

    /** Bow change: before anything is known. */
    BOW_START(
            "Bow change: at first",
            "odds of a bow change between two touching notes of one pitch",
            Unit.EVIDENCE,
            -2,
            -10,
            4),
    /** Bow change: across a blip. */
    BOW_ACROSS_BLIP("Bow change: across a blip", "the two parts were parted by a blip", Unit.EVIDENCE, -1.5, -6, 2),
    /** Bow change: a gap. */
    BOW_GAP("Bow change: gap", "there is a short gap", Unit.EVIDENCE, 4.5, 0, 8),
    /** Bow change: a wide gap. */
    BOW_WIDE_GAP("Bow change: wide gap", "there is a wide gap", Unit.EVIDENCE, 5, 0, 8),
    /** How wide a wide gap is. */
    BOW_WIDE_GAP_SECONDS("Wide gap", "how wide a wide gap is", Unit.SECONDS, 0.03, 0, 0.2),
    /** The widest gap looked at; beyond it notes are apart. */
    SPLIT_GAP_SECONDS("Widest split", "notes of one pitch further apart are two notes", Unit.SECONDS, 0.06, 0, 0.3),
    /** Bow change: another string starts at the same moment. */
    BOW_TOGETHER("Bow change: together", "another string starts a note at the same moment", Unit.EVIDENCE, 3, 0, 6),
    /** Bow change: velocity about equal. */
    BOW_EVEN("Bow change: even", "as loud as the part before: a stroke starts anew", Unit.EVIDENCE, 1, 0, 4),
    /** Bow change: louder. */
    BOW_LOUDER(
            "Bow change: louder",
            "a little louder than the part before: heard again as it swells",
            Unit.EVIDENCE,
            -1,
            -6,
            0),
    /** Bow change: much louder. */
    BOW_MUCH_LOUDER("Bow change: much louder", "much louder than the part before", Unit.EVIDENCE, -2.5, -8, 0),
    /** Bow change: from where on a part is a little louder. */
    BOW_LOUDER_VELOCITY("Louder", "from how much more velocity on a part is louder", Unit.VELOCITY, 4, 0, 40),
    /** Bow change: from where on a part is much louder. */
    BOW_MUCH_LOUDER_VELOCITY(
            "Much louder", "from how much more velocity on it is much louder", Unit.VELOCITY, 8, 0, 60),
    /** Bow change: down to where a part is as loud. */
    BOW_EVEN_VELOCITY("Even", "down to how much less velocity a part is as loud", Unit.VELOCITY, -5, -40, 0),
    /** Bow change: down to where a part is much softer. */
    BOW_SOFTER_VELOCITY("Much softer", "from how much less velocity on it is much softer", Unit.VELOCITY, -12, -60, 0),
    /** How much rhythm counts. */
    RHYTHM("Rhythm", "how much the durations usual in this take count", Unit.EVIDENCE, 0.8, 0, 3),
    /** How freely rhythm is kept. */
    RHYTHM_JITTER_SECONDS("Free rhythm", "how far a stroke may fall beside its beat", Unit.SECONDS, 0.012, 0.001, 0.1),
    /** Strokes are not shorter than this. */
    SHORTEST_STROKE_SECONDS("Shortest stroke", "a bow stroke is not shorter than this", Unit.SECONDS, 0.07, 0, 0.3),

    /** Staircase: before anything is known. */
    STAIRCASE_START("Staircase: at first", "odds of a slide before looking", Unit.EVIDENCE, -1.5, -8, 4),
    /** Staircase: a short step. */
    STAIRCASE_SHORT_STEP("Staircase: short step", "each step no longer than a flicker", Unit.EVIDENCE, 2, 0, 6),
    /** Staircase: a long step. */
    STAIRCASE_LONG_STEP("Staircase: long step", "each step as long as a played note", Unit.EVIDENCE, -1, -6, 0),
    /** How long a long step is. */
    STAIRCASE_LONG_STEP_SECONDS("Long step", "how long a long step is", Unit.SECONDS, 0.13, 0, 0.5),
    /** Staircase: by semitones. */
    STAIRCASE_CHROMATIC(
            "Staircase: by semitones", "each step a semitone from both its neighbours", Unit.EVIDENCE, 0.7, 0, 4),
    /** Staircase: a gap between steps. */
    STAIRCASE_GAP("Staircase: gap", "for each gap between steps", Unit.EVIDENCE, -0.5, -4, 0),
    /** Staircase: a length unusual in this take. */
    STAIRCASE_UNUSUAL("Staircase: unusual", "steps of a length nobody plays in this take", Unit.EVIDENCE, 0.5, 0, 4),
    /** Staircase: a length usual in this take. */
    STAIRCASE_USUAL("Staircase: usual", "steps of a length usual in this take", Unit.EVIDENCE, -1, -4, 0),
    /** Staircase: no step is longer. */
    STAIRCASE_MOST_SECONDS("Longest step", "no step of a slide is longer", Unit.SECONDS, 0.25, 0, 1),

    /** Late: how much better the earlier start must fit. */
    LATE_FIT("Late: fit", "how much better an earlier start must fit the rhythm", Unit.EVIDENCE, 3, 0, 10),
    /** Late: least hole before it. */
    LATE_LEAST_SECONDS("Late: least", "the least it may be late", Unit.SECONDS, 0.05, 0, 0.3),
    /** Late: longest hole before it. */
    LATE_MOST_SECONDS("Late: most", "the most it may be late; beyond it is a rest", Unit.SECONDS, 0.25, 0, 1);

    /** What a threshold is measured in. */
    public enum Unit {
        /** Seconds. */
        SECONDS,
        /** Semitones. */
        SEMITONES,
        /** Steps of MIDI velocity. */
        VELOCITY,
        /** Natural logarithm of odds. */
        EVIDENCE
    }

    private final String label;
    private final String meaning;
    private final Unit unit;
    private final double standard;
    private final double least;
    private final double most;

    Threshold(String label, String meaning, Unit unit, double standard, double least, double most) {
        this.label = label;
        this.meaning = meaning;
        this.unit = unit;
        this.standard = standard;
        this.least = least;
        this.most = most;
    }

    /** A short name for the screen. */
    public String label() {
        return label;
    }

    /** What it stands for, in a few words. */
    public String meaning() {
        return meaning;
    }

    /** What it is measured in. */
    public Unit unit() {
        return unit;
    }

    /** The figure used unless it is moved. */
    public double standard() {
        return standard;
    }

    /** The least it can be moved to, inclusive. */
    public double least() {
        return least;
    }

    /** The most it can be moved to, inclusive. */
    public double most() {
        return most;
    }
}
