package rosinbook.circuit;

import java.util.ArrayList;
import java.util.List;

/**
 * A pin of one of the two connectors, with what it carries.
 *
 * @param point its name wherever the bench speaks of it, such as {@code synth pin 7}
 */
record Contact(Plug plug, String label, PinRole role, String point) {
    Contact(Plug plug, String label, PinRole role) {
        this(plug, label, role, plug.pin(label));
    }

    static List<Contact> of(Wiring wiring) {
        List<Contact> contacts = new ArrayList<>();
        for (Plug plug : Plug.values()) {
            plug.connector(wiring).pins().forEach((label, pin) -> contacts.add(new Contact(plug, label, pin.role())));
        }
        return contacts;
    }

    boolean isSynths() {
        return plug == Plug.SYNTH;
    }

    boolean isGround() {
        return role instanceof PinRole.Ground;
    }

    boolean isSupply() {
        return role instanceof PinRole.Supply;
    }

    boolean isSignal() {
        return role instanceof PinRole.StringSignal || role instanceof PinRole.Mixed;
    }

    boolean isControl() {
        return role instanceof PinRole.Control || role instanceof PinRole.SwitchLine;
    }

    /** The control line it belongs to; null for other roles. */
    String line() {
        if (role instanceof PinRole.Control control) {
            return control.line();
        }
        return role instanceof PinRole.SwitchLine line ? line.line() : null;
    }

    /** As a sentence names it: {@code synth pin 7 (supply +7 V)}. */
    String describe() {
        return point + " (" + plug.carries(role) + ")";
    }
}
