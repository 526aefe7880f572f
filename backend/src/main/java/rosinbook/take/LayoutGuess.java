package rosinbook.take;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The strings of a file and how they are told apart: as asked for, or as fits the notes best. */
record LayoutGuess(Tuning tuning, StringLayout layout, List<String> remarks) {
    private static final List<Tuning> KNOWN = List.of(Tuning.VIOLIN, Tuning.FIVE_STRING, Tuning.VIOLA, Tuning.CELLO);

    static LayoutGuess of(Performance performance, TakeReader asked) {
        List<String> remarks = new ArrayList<>();
        StringLayout.By by = asked.by().orElseGet(() -> guessBy(performance, asked));
        if (by == StringLayout.By.NOTHING) {
            remarks.add("All notes come on one channel, so the strings cannot be told apart: "
                    + "ghosts from a neighbouring string cannot be found in this take.");
        }
        List<Tuning> tunings = asked.tuning().map(List::of).orElse(KNOWN);
        LayoutGuess best = null;
        double bestFit = Double.NEGATIVE_INFINITY;
        for (Tuning tuning : tunings) {
            for (StringLayout layout : layouts(by, tuning, asked)) {
                double fit = fit(performance, tuning, layout);
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

    /**
     * Seconds of sound that lie on a string and on its fingerboard, less those that do not; what comes first in the lists wins
     * a tie. Going lowest string first takes clear evidence, since a leak may lie below its string.
     */
    private static double fit(Performance performance, Tuning tuning, StringLayout layout) {
        double fit = 0;
        double total = 0;
        for (Performance.Heard heard : performance.notes()) {
            double seconds = performance.tempoMap().seconds(heard.offTick())
                    - performance.tempoMap().seconds(heard.onTick());
            double weight = Math.min(seconds, 2) * heard.velocity();
            total += weight;
            int string = layout.string(heard.channel(), heard.track(), tuning.strings());
            if (string == 0) {
                fit -= weight;
                continue;
            }
            int above = heard.key()
                    - (layout.by() == StringLayout.By.NOTHING
                            ? tuning.open(tuning.strings()).midi()
                            : tuning.open(string).midi());
            fit += above >= 0 && above <= 31 ? weight : -weight;
        }
        return layout.highestFirst() ? fit : fit - 0.2 * total;
    }
}
