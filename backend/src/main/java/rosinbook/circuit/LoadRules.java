package rosinbook.circuit;

import java.util.List;
import java.util.Optional;

/** Rules about current and heat, and about what is fed and from where. */
final class LoadRules {
    /** Below this nobody asks what a rail can give, mA (common practice, no source). */
    private static final double NOTICEABLE_MILLIAMPS = 10;

    private LoadRules() {}

    static void check(Plugged plugged, Findings findings) {
        double total = 0;
        for (Contact contact : plugged.contacts) {
            if (contact.isSynths() && contact.role() instanceof PinRole.Supply supply) {
                double milliamps = milliamps(plugged, contact);
                total += milliamps;
                railHoldsOut(plugged, contact, supply, milliamps, findings);
            }
        }
        Double budget = plugged.wiring.synth().supplyMilliamps();
        if (budget != null && total > budget * (1 + 1e-9)) {
            findings.add(
                    Rule.SUPPLY_OVERDRAWN,
                    "all supply rails",
                    List.of(),
                    "Together they must give " + milliampsInWords(total) + ", and can give " + milliampsInWords(budget)
                            + ".",
                    "Use larger divider resistors, fewer preamps, or preamps with batteries of their own.");
        }
        plugged.layout.pieces().forEach(piece -> staysCool(plugged, piece, findings));
        plugged.layout.amps().forEach(amp -> isFed(plugged, amp, findings));
        plugged.wiring.adapter().routes().forEach((id, route) -> dividerIsFed(plugged, id, route, findings));
    }

    /** What a synth's rail must give, mA: resistors, preamps, and what the instrument is stated to take. */
    static double milliamps(Plugged plugged, Contact rail) {
        double milliamps = 1000 * Math.abs(plugged.circuit.ampsOutOf(rail.point()));
        for (Amp amp : plugged.layout.amps()) {
            if (rail.label().equals(amp.preamp().supplyPin())
                    || rail.label().equals(amp.preamp().negativeSupplyPin())) {
                milliamps += amp.preamp().supplyMilliamps();
            }
        }
        for (Contact contact : plugged.joinedWith(rail)) {
            if (!contact.isSynths()
                    && contact.role() instanceof PinRole.Supply supply
                    && supply.maxMilliamps() != null) {
                milliamps += supply.maxMilliamps();
            }
        }
        return milliamps;
    }

    private static void railHoldsOut(
            Plugged plugged, Contact rail, PinRole.Supply supply, double milliamps, Findings findings) {
        if (supply.maxMilliamps() != null && milliamps > supply.maxMilliamps() * (1 + 1e-9)) {
            findings.add(
                    Rule.SUPPLY_OVERDRAWN,
                    rail.point(),
                    plugged.routesAt(rail),
                    rail.describe() + " must give " + milliampsInWords(milliamps) + ", and can give "
                            + milliampsInWords(supply.maxMilliamps()) + ".",
                    "Use larger divider resistors, fewer preamps, or preamps with batteries of their own.");
        }
        boolean stated = supply.maxMilliamps() != null || plugged.wiring.synth().supplyMilliamps() != null;
        if (!stated && milliamps > NOTICEABLE_MILLIAMPS) {
            findings.add(
                    Rule.SUPPLY_NOT_KNOWN,
                    rail.point(),
                    plugged.routesAt(rail),
                    rail.describe() + " must give " + milliampsInWords(milliamps)
                            + ", and nobody stated what it can give.",
                    "Look the limit up or ask a technician, and write it beside the pin.");
        }
    }

    private static void staysCool(Plugged plugged, Piece piece, Findings findings) {
        double rating = plugged.wiring.adapter().parts().ratingMilliwatts();
        double milliwatts = 1000 * plugged.circuit.watts(piece);
        if (milliwatts <= rating / 2 * (1 + 1e-9)) {
            return;
        }
        boolean over = milliwatts > rating * (1 + 1e-9);
        findings.add(
                over ? Rule.RESISTOR_OVERLOADED : Rule.RESISTOR_WARM,
                "route " + piece.route() + ", " + piece.part() + " resistor",
                List.of(piece.route()),
                Figures.ohms(piece.ohms()) + " turns " + Figures.plain(Figures.rounded(milliwatts)) + " mW into heat, "
                        + (over ? "more than" : "more than half") + " its rating of " + Figures.plain(rating) + " mW.",
                "Use larger resistors in the same proportion, or one of a higher rating.");
    }

    private static void isFed(Plugged plugged, Amp amp, Findings findings) {
        if (amp.preamp().supplyMilliamps() == 0) {
            return;
        }
        Optional<String> fault = fault(plugged, amp.preamp().supplyPin(), 0)
                .or(() -> amp.preamp().negativeSupplyPin() == null
                        ? Optional.empty()
                        : fault(plugged, amp.preamp().negativeSupplyPin(), -1));
        fault.ifPresent(sentence -> findings.add(
                Rule.PREAMP_UNFED,
                "route " + amp.route(),
                List.of(amp.route()),
                "The preamp draws " + milliampsInWords(amp.preamp().supplyMilliamps()) + ", and " + sentence + ".",
                "Name the synth's supply pin that feeds it, or give it a battery and set its current to 0."));
    }

    /** @param sign -1 for a rail that must be negative, 0 for any */
    private static Optional<String> fault(Plugged plugged, String pin, int sign) {
        if (pin == null) {
            return Optional.of("no supply pin is named");
        }
        Pin found = plugged.wiring.synth().connector().pins().get(pin);
        if (found == null || !(found.role() instanceof PinRole.Supply supply)) {
            return Optional.of(Plug.SYNTH.pin(pin) + " is no supply");
        }
        return sign < 0 && supply.volts() > 0
                ? Optional.of(Plug.SYNTH.pin(pin) + " is no negative supply")
                : Optional.empty();
    }

    private static void dividerIsFed(Plugged plugged, String id, Route route, Findings findings) {
        for (Via via : PlainRules.ways(route.via())) {
            if (via instanceof Via.Divider divider && divider.supplyPin() != null) {
                fault(plugged, divider.supplyPin(), 0)
                        .ifPresent(sentence -> findings.add(
                                Rule.DIVIDER_UNFED,
                                "route " + id,
                                List.of(id),
                                "The divider should start at a supply, and " + sentence + ".",
                                "Name one of the synth's supply pins."));
            }
        }
    }

    private static String milliampsInWords(double milliamps) {
        return Figures.plain(Figures.rounded(milliamps)) + " mA";
    }
}
