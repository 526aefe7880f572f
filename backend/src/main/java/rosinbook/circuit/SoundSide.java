package rosinbook.circuit;

import java.util.ArrayList;
import java.util.List;

/** Predicts what the wiring does to each open string. */
final class SoundSide {
    private static final double WORTH_A_PREAMP_DECIBELS = -3;
    private static final double REFERENCE_HERTZ = 440;

    private SoundSide() {}

    static List<StringOutlook> of(Wiring wiring) {
        List<StringOutlook> outlooks = new ArrayList<>();
        if (wiring.instrument().pickup() != null) {
            wiring.instrument().openNotes().keySet().forEach(string -> outlooks.add(outlook(wiring, string)));
        }
        return List.copyOf(outlooks);
    }

    private static StringOutlook outlook(Wiring wiring, int string) {
        var note = wiring.instrument().openNotes().get(string);
        double hertz = note.hertz(REFERENCE_HERTZ);
        double ohms = resistance(wiring, string);
        var source = PiezoSource.of(wiring.instrument().pickup(), ohms);
        double corner = source.cornerDecibels(hertz);
        double cable = source.cableDecibels();
        boolean wants = corner + cable < WORTH_A_PREAMP_DECIBELS;
        String sentence = "String " + string + " (" + note + ", " + Figures.plain(Math.round(hertz)) + " Hz) loses "
                + Figures.plain(Math.round(-10 * corner) / 10.0) + " dB into " + Figures.ohms(ohms) + " and "
                + Figures.plain(Math.round(-10 * cable) / 10.0) + " dB in the cable"
                + (wants ? "; a preamp at the instrument would help." : "; straight is fine.");
        return new StringOutlook(string, note, hertz, ohms, source.cornerHertz(), corner, cable, wants, sentence);
    }

    /** What the string's element meets: its preamp's input, else the synth's input and any resistor before it. */
    private static double resistance(Wiring wiring, int string) {
        for (Route route : wiring.adapter().routes().values()) {
            Pin pin = route.instrumentPin() == null
                    ? null
                    : wiring.instrument().connector().pins().get(route.instrumentPin());
            if (pin == null || !pin.role().equals(new PinRole.StringSignal(string))) {
                continue;
            }
            for (Via via : PlainRules.ways(route.via())) {
                if (via instanceof Via.Preamp preamp && preamp.inputOhms() != null) {
                    return preamp.inputOhms();
                }
                if (via instanceof Via.Resistor resistor) {
                    return resistor.ohms() + wiring.synth().inputOhmsOrUsual();
                }
            }
        }
        return wiring.synth().inputOhmsOrUsual();
    }
}
