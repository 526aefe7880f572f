package rosinbook.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Rules about strings, inputs and the mixed signal. */
final class SignalRules {
    private final Plugged plugged;
    private final Findings findings;
    private final Map<Contact, Set<Contact>> reached = new LinkedHashMap<>();

    private SignalRules(Plugged plugged, Findings findings) {
        this.plugged = plugged;
        this.findings = findings;
        for (Contact contact : plugged.contacts) {
            if (!contact.isSynths() && (contact.isSignal() || contact.isControl() || contact.isSupply())) {
                reached.put(contact, contact.isSupply() ? wiredTo(plugged, contact) : plugged.reachedFrom(contact));
            }
        }
    }

    private static Set<Contact> wiredTo(Plugged plugged, Contact supply) {
        Set<Contact> ends = new LinkedHashSet<>(plugged.joinedWith(supply));
        ends.removeIf(end -> !end.isSynths());
        return ends;
    }

    static void check(Plugged plugged, Findings findings) {
        var rules = new SignalRules(plugged, findings);
        rules.everyStringArrives();
        rules.everyNotedStringHasAPin();
        rules.inputsAreFedOnce();
        rules.orderIsKept();
        rules.levelsMatch();
        rules.mixedArrives();
        rules.rolesAgree();
    }

    private void everyStringArrives() {
        reached.forEach((contact, ends) -> {
            boolean arrives = ends.stream().anyMatch(end -> end.role() instanceof PinRole.StringSignal);
            if (contact.role() instanceof PinRole.StringSignal && !arrives && !isLeftOpen(contact)) {
                findings.add(
                        Rule.STRING_WITHOUT_INPUT,
                        contact.point(),
                        plugged.routesAt(contact),
                        plugged.isGrounded(contact)
                                ? contact.describe() + " is shorted to ground and will be silent."
                                : contact.describe() + " reaches no input of the synth.",
                        "Route it to a free input, or mark it as left open on purpose.");
            }
        });
    }

    private void everyNotedStringHasAPin() {
        plugged.wiring.instrument().openNotes().forEach((string, note) -> {
            if (reached.keySet().stream()
                    .noneMatch(contact -> contact.role().equals(new PinRole.StringSignal(string)))) {
                findings.add(
                        Rule.STRING_WITHOUT_INPUT,
                        "string " + string,
                        List.of(),
                        "The instrument has a string " + string + " (" + note + "), and no pin is known to carry it.",
                        "Bow it and find its pin with the probe table.");
            }
        });
    }

    private void inputsAreFedOnce() {
        for (Contact input : plugged.contacts) {
            if (!input.isSynths() || !(input.role() instanceof PinRole.StringSignal)) {
                continue;
            }
            List<Contact> strings = reached.keySet().stream()
                    .filter(contact -> contact.role() instanceof PinRole.StringSignal
                            && reached.get(contact).contains(input))
                    .toList();
            if (strings.size() > 1) {
                findings.add(
                        Rule.TWO_STRINGS_ONE_INPUT,
                        input.point(),
                        plugged.routesAt(input),
                        strings.get(0).describe() + " and " + strings.get(1).describe() + " both end at "
                                + input.describe() + "; the synth cannot tell them apart.",
                        "Give each string an input of its own, or leave one of them out.");
            }
            boolean tied = plugged.isGrounded(input) || isTied(input);
            if (strings.isEmpty() && !tied) {
                findings.add(
                        Rule.INPUT_FLOATING,
                        input.point(),
                        List.of(),
                        input.describe() + " gets no string and is left open; it may pick up hum and false notes.",
                        "Tie it down to ground.");
            }
        }
    }

    private void orderIsKept() {
        List<Contact> strings = reached.keySet().stream()
                .filter(contact -> contact.role() instanceof PinRole.StringSignal)
                .toList();
        for (Contact higher : strings) {
            for (Contact lower : strings) {
                int gap = number(lower) - number(higher);
                if (gap > 0 && firstInput(higher) > firstInput(lower) && firstInput(lower) > 0) {
                    findings.add(
                            Rule.STRINGS_CROSSED,
                            higher.point(),
                            plugged.routesAt(higher, lower),
                            "String " + number(higher) + " goes to input " + firstInput(higher) + " but string "
                                    + number(lower) + " to input " + firstInput(lower) + ".",
                            "Keep the order of the strings, unless the synth is set up for this.");
                }
            }
        }
    }

    private void levelsMatch() {
        List<Contact> amplified = new ArrayList<>();
        List<Contact> plain = new ArrayList<>();
        reached.forEach((contact, ends) -> {
            if (contact.role() instanceof PinRole.StringSignal && firstInput(contact) > 0) {
                boolean hasAmp = plugged.layout.amps().stream()
                        .anyMatch(amp -> plugged.nets.of(amp.from()) == plugged.nets.of(contact.point()));
                (hasAmp ? amplified : plain).add(contact);
            }
        });
        if (!amplified.isEmpty() && !plain.isEmpty()) {
            findings.add(
                    Rule.LEVELS_UNEVEN,
                    "strings",
                    plugged.routesAt(plain.toArray(Contact[]::new)),
                    "Some strings go through a preamp and " + plain.get(0).describe()
                            + " does not; their levels and their sound will not match.",
                    "Use preamps for all strings or for none.");
        }
    }

    private void mixedArrives() {
        for (Contact contact : plugged.contacts) {
            boolean wanted = contact.isSynths() && contact.role() instanceof PinRole.Mixed;
            if (wanted && reached.values().stream().noneMatch(ends -> ends.contains(contact))) {
                findings.add(
                        Rule.MIXED_MISSING,
                        contact.point(),
                        List.of(),
                        "Nothing feeds " + contact.describe() + "; the straight sound will be silent.",
                        "Route the instrument's mixed signal there, or its strings through one resistor each.");
            }
        }
    }

    private void rolesAgree() {
        reached.forEach((contact, ends) -> {
            for (Contact end : ends) {
                boolean mixing = contact.role() instanceof PinRole.StringSignal
                        && end.role() instanceof PinRole.Mixed
                        && plugged.nets.of(contact.point()) != plugged.nets.of(end.point());
                if (!mixing && differ(contact, end)) {
                    findings.add(
                            Rule.ROLES_DIFFER,
                            contact.point(),
                            plugged.routesAt(contact, end),
                            contact.describe() + " goes to " + end.describe() + ".",
                            "Join pins that carry the same thing, or correct the pin tables.");
                }
            }
        });
    }

    /** Unknown pins, unused pins, grounds and rails on signals have rules of their own. */
    private static boolean differ(Contact contact, Contact end) {
        if (contact.isSupply()) {
            return end.isControl();
        }
        if (contact.isControl() && end.isControl()) {
            return !contact.line().equals(end.line());
        }
        if (contact.isControl()) {
            return end.isSignal();
        }
        boolean bothStrings =
                contact.role() instanceof PinRole.StringSignal && end.role() instanceof PinRole.StringSignal;
        boolean bothMixed = contact.role() instanceof PinRole.Mixed && end.role() instanceof PinRole.Mixed;
        return (end.isSignal() || end.isControl()) && !bothStrings && !bothMixed;
    }

    private boolean isLeftOpen(Contact contact) {
        return plugged.wiring.adapter().routes().values().stream()
                .anyMatch(route ->
                        route.via() instanceof Via.Open && contact.label().equals(route.instrumentPin()));
    }

    private boolean isTied(Contact input) {
        int net = plugged.nets.of(input.point());
        return plugged.layout.pieces().stream()
                .anyMatch(piece -> piece.part().equals("tie") && plugged.nets.of(piece.from()) == net);
    }

    private static int number(Contact contact) {
        return ((PinRole.StringSignal) contact.role()).string();
    }

    /** The lowest input a string reaches; 0 for none. */
    private int firstInput(Contact contact) {
        return reached.get(contact).stream()
                .filter(end -> end.role() instanceof PinRole.StringSignal)
                .mapToInt(SignalRules::number)
                .min()
                .orElse(0);
    }
}
