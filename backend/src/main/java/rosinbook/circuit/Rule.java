package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** What the check of an adapter looks for. The code is the name in lower case with hyphens and never changes. */
public enum Rule {
    /** A route names a pin that its connector does not have. */
    PIN_NOT_THERE(Severity.UNSAFE),
    /** A pin of which nobody knows what it carries is joined to something. */
    UNKNOWN_PIN_JOINED(Severity.UNSAFE),
    /** A supply rail is joined to ground by wires. */
    RAIL_TO_GROUND(Severity.UNSAFE),
    /** Two rails of different voltage are joined by wires. */
    RAIL_TO_RAIL(Severity.UNSAFE),
    /** A rail, or a steady voltage made from one, stands on a signal pin. */
    RAIL_INTO_SIGNAL(Severity.UNSAFE),
    /** A rail or a control line is driven from two sources at once. */
    DRIVEN_TWICE(Severity.UNSAFE),
    /** The instrument's ground and the synth's are not joined by a wire. */
    GROUNDS_APART(Severity.UNSAFE),
    /** A control line gets a voltage outside its range. */
    CONTROL_OUT_OF_RANGE(Severity.UNSAFE),
    /** A rail, or all together, must give more current than they can. */
    SUPPLY_OVERDRAWN(Severity.UNSAFE),
    /** A resistor makes more heat than its rating. */
    RESISTOR_OVERLOADED(Severity.UNSAFE),
    /** Two strings end at one input. */
    TWO_STRINGS_ONE_INPUT(Severity.FAULTY),
    /** A string reaches no input. */
    STRING_WITHOUT_INPUT(Severity.FAULTY),
    /** The worst case of a control voltage reaches a neighbouring band. */
    CONTROL_SPILLS(Severity.FAULTY),
    /** A divider under its load gives something else than it is meant to. */
    DIVIDER_MISSES(Severity.FAULTY),
    /** A divider starts at a pin that is no supply. */
    DIVIDER_UNFED(Severity.FAULTY),
    /** A preamp has no supply, or one of the wrong sign. */
    PREAMP_UNFED(Severity.FAULTY),
    /** A driven control pin belongs to a line nobody described, so its range is not known. */
    LINE_NOT_DESCRIBED(Severity.FAULTY),
    /** Two pins are joined that carry different kinds of things. */
    ROLES_DIFFER(Severity.FAULTY),
    /** A connector's positions were noted from the solder side, or mirror the other's. */
    DRAWN_FROM_WRONG_SIDE(Severity.FAULTY),
    /** An input no string feeds is left open. */
    INPUT_FLOATING(Severity.ADVICE),
    /** A resistor makes more heat than half its rating. */
    RESISTOR_WARM(Severity.ADVICE),
    /** Some strings go through preamps and others do not. */
    LEVELS_UNEVEN(Severity.ADVICE),
    /** A higher string goes to a later input than a lower one. */
    STRINGS_CROSSED(Severity.ADVICE),
    /** The synth has a pin for the mixed signal and nothing feeds it. */
    MIXED_MISSING(Severity.ADVICE),
    /** A control voltage is right, but tolerances could take it out of its range or out of every band. */
    CONTROL_NEAR_LIMIT(Severity.ADVICE),
    /** A control pin is neither driven nor left open on purpose. */
    CONTROL_LEFT_OPEN(Severity.ADVICE),
    /** Noticeable current is drawn from a rail whose limit nobody stated. */
    SUPPLY_NOT_KNOWN(Severity.ADVICE),
    /** A resistor is none of the chosen series. */
    VALUE_NOT_MADE(Severity.ADVICE);

    private final Severity severity;

    Rule(Severity severity) {
        this.severity = severity;
    }

    /** The same for every finding of this rule. */
    public Severity severity() {
        return severity;
    }

    /** Such as {@code rail-to-ground}. */
    @JsonValue
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
