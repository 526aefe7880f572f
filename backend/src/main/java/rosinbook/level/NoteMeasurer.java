package rosinbook.level;

import java.util.ArrayList;
import java.util.List;

/**
 * Levels from the notes a synth played: a string's own notes by their velocities, sorted into soft, medium and loud, and
 * the ghosts on it as what its trigger must ignore. Which string caused a ghost is not known, so leaks stay unknown.
 */
final class NoteMeasurer {
    /** What is ignored where no ghost was played: nothing louder than the faintest note there is. */
    private static final double FAINTEST_DB = new PlayedNote(1, 1, true).decibels();

    private NoteMeasurer() {}

    static LevelMeasurement measure(List<PlayedNote> notes, int strings, LevelOptions options) {
        List<LevelReading> readings = new ArrayList<>();
        List<TriggerWindow> windows = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        for (int string = 1; string <= strings; string++) {
            List<Double> own = decibels(notes, string, false);
            List<Double> ghosts = decibels(notes, string, true);
            List<Loudness> loudness = LoudnessClasses.of(own);
            for (int i = 0; i < own.size(); i++) {
                readings.add(new LevelReading(string, loudness.get(i), string, own.get(i)));
            }
            if (own.isEmpty()) {
                warnings.add("String " + string + " played no note of its own; its window is not known.");
                continue;
            }
            double softest = own.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
            double loudestGhost =
                    ghosts.stream().mapToDouble(Double::doubleValue).max().orElse(FAINTEST_DB);
            windows.add(TriggerWindow.between(
                    string,
                    softest,
                    new TriggerWindow.Ignored(Decibels.toPower(loudestGhost), null),
                    options.marginDb()));
        }
        Levels levels = new Levels(InputOrder.straight(strings), strings, readings, List.of(), LevelUnit.VELOCITY_DB);
        return new LevelMeasurement(
                levels,
                0,
                List.of(),
                List.of(),
                Crosstalk.of(levels),
                windows,
                StringRange.ofAll(options.openNotes(), options.referenceHertz()),
                null,
                warnings,
                List.of());
    }

    private static List<Double> decibels(List<PlayedNote> notes, int string, boolean isGhost) {
        return notes.stream()
                .filter(note -> note.string() == string && note.isGhost() == isGhost)
                .map(PlayedNote::decibels)
                .toList();
    }
}
