package rosinbook.take;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The strings of a file and how they are told apart: as asked for, or as fits the notes best. */
record LayoutGuess(Tuning tuning, StringLayout layout, List<String> remarks) {
    private static final List<Tuning> KNOWN = List.of(Tuning.VIOLIN, Tuning.FIVE_STRING, Tuning.VIOLA, Tuning.CELLO);

    private static final double LONG_NOTE_SECONDS = 2;
    private static final double CLEARLY = 0.2;
    private static final int FINGERBOARD_SEMITONES = 31;

    static LayoutGuess of(Performance performance, TakeReader asked) {
        List<String> remarks = new ArrayList<>();
        StringLayout.By by = asked.by().orElseGet(() -> guessBy(performance, asked));
        if (by == StringLayout.By.NOTHING) {
            remarks.add("All notes come on one channel, so the strings cannot be told apart: "
                    + "ghosts from a neighbouring string cannot be found in this take.");
        }
        List<Tuning> tunings = asked.tuning().map(List::of).orElse(KNOWN);
        double[][] sound = sound(performance, by);
        LayoutGuess best = null;
        double bestFit = Double.NEGATIVE_INFINITY;
        for (Tuning tuning : tunings) {
            for (StringLayout layout : layouts(by, tuning, asked)) {
                double fit = fit(sound, tuning, layout);
                if (fit > bestFit) {
                    bestFit = fit;
                    best = new LayoutGuess(tuning, layout, remarks);
                }
            }
        }
        if (asked.tuning().isEmpty()) {
            remarks.add(
                    "The strings were taken to be " + best.tuning() + ", going by the notes; say so if they are not.");
        }
        if (by == StringLayout.By.CHANNEL && asked.baseChannel().isEmpty()) {
            remarks.add("The strings were taken to start at channel "
                    + best.layout().baseChannel() + ".");
        }
        if (!best.layout().highestFirst()) {
            remarks.add("The first channel or track was taken to be the lowest string.");
        }
        return best;
    }

    private static StringLayout.By guessBy(Performance performance, TakeReader asked) {
        long channels = performance.notes().stream()
                .mapToInt(Performance.Heard::channel)
                .distinct()
                .count();
        boolean singleString = asked.tuning().map(Tuning::strings).orElse(0) == 1;
        if (asked.baseChannel().isPresent() || singleString || channels != 1) {
            return StringLayout.By.CHANNEL;
        }
        return performance.tracksWithNotes() > 1 ? StringLayout.By.TRACK : StringLayout.By.NOTHING;
    }

    private static List<StringLayout> layouts(StringLayout.By by, Tuning tuning, TakeReader asked) {
        List<StringLayout> layouts = new ArrayList<>();
        int last = by == StringLayout.By.CHANNEL ? 17 - tuning.strings() : 1;
        int from = asked.baseChannel().orElse(1);
        int to = asked.baseChannel().orElse(last);
        if (by == StringLayout.By.CHANNEL && from > last) {
            throw new IllegalArgumentException("base channel " + from + " leaves no room for " + tuning.strings()
                    + " strings below channel 17; give " + last + " or less");
        }
        for (boolean highestFirst : orders(asked.highestFirst())) {
            for (int base = from; base <= to; base++) {
                layouts.add(new StringLayout(by, base, highestFirst));
            }
        }
        return layouts;
    }

    private static List<Boolean> orders(Optional<Boolean> asked) {
        return asked.map(List::of).orElse(List.of(true, false));
    }

    /** Seconds of sound, loud ones counting more, by channel or track (beyond the sixteenth: last row) and by key. */
    private static double[][] sound(Performance performance, StringLayout.By by) {
        double[][] sound = new double[17][128];
        for (Performance.Heard heard : performance.notes()) {
            double seconds = performance.tempoMap().seconds(heard.offTick())
                    - performance.tempoMap().seconds(heard.onTick());
            int place = by == StringLayout.By.TRACK ? Math.min(16, heard.track()) : heard.channel() - 1;
            sound[place][heard.key()] += Math.min(seconds, LONG_NOTE_SECONDS) * heard.velocity();
        }
        return sound;
    }

    /**
     * How much of the sound lies on a string and on its fingerboard, less what does not; what comes first in the lists wins a
     * tie. Going lowest string first takes clear evidence, since a leak may lie below its string.
     */
    private static double fit(double[][] sound, Tuning tuning, StringLayout layout) {
        double fit = 0;
        double total = 0;
        for (int place = 0; place < sound.length; place++) {
            int string = layout.string(place + 1, place, tuning.strings());
            for (int key = 0; key < 128; key++) {
                total += sound[place][key];
                fit += fits(string, key, tuning, layout) ? sound[place][key] : -sound[place][key];
            }
        }
        return layout.highestFirst() ? fit : fit - CLEARLY * total;
    }

    private static boolean fits(int string, int key, Tuning tuning, StringLayout layout) {
        if (string == 0) {
            return false;
        }
        boolean apart = layout.by() != StringLayout.By.NOTHING;
        int lowest = tuning.open(apart ? string : tuning.strings()).midi();
        int highest = tuning.open(apart ? string : 1).midi() + FINGERBOARD_SEMITONES;
        return key >= lowest && key <= highest;
    }
}
