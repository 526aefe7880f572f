package rosinbook.take;

import java.util.ArrayList;
import java.util.List;
import rosinbook.pitch.Note;

/** Writes the exercise passage by passage. What is tried: common practice in setting up such rigs, no source. */
final class ExerciseWriter {
    private static final int COUNT_IN_BEATS = 4;
    private static final int REST_BEATS = 4;
    private static final List<String> SOFT_TO_LOUD = List.of("pp", "mp", "mf", "ff");
    private static final int[] SLURRED_SEMITONES = {0, 2, 4, 5};
    private static final int SLIDE_FROM = 2;
    private static final int SLIDE_TO = 7;

    /** Share of a beat that sounds when the next stroke is bowed anew. */
    private static final double BOWED = 0.95;

    private final Tuning tuning;
    private final List<Exercise.Passage> passages = new ArrayList<>();
    private List<Exercise.Scripted> strokes = new ArrayList<>();
    private double beat = COUNT_IN_BEATS;
    private double start = beat;
    private boolean down = true;

    ExerciseWriter(Tuning tuning) {
        this.tuning = tuning;
    }

    Exercise write(double tempoBpm) {
        softToLoud();
        longBows();
        repeats();
        slurs();
        slides();
        crossings();
        doubleStops();
        return new Exercise(tuning, tempoBpm, COUNT_IN_BEATS, passages);
    }

    private void softToLoud() {
        for (int string = 1; string <= tuning.strings(); string++) {
            for (String loudness : SOFT_TO_LOUD) {
                bow(string, 0, 2, loudness);
            }
        }
        end("Soft to loud", "Each open string, four strokes, from as soft as it speaks to as loud as it takes.");
    }

    private void longBows() {
        for (int string = 1; string <= tuning.strings(); string++) {
            bow(string, 0, 6, "mf");
        }
        end("Long bows", "One bow for six beats on each open string, as even as you can.");
    }

    private void repeats() {
        for (int string = 1; string <= tuning.strings(); string++) {
            for (int stroke = 0; stroke < 8; stroke++) {
                bow(string, 0, 0.5, "mf");
            }
        }
        end("Repeats", "Eight short strokes on each open string, the bow changing every time.");
    }

    private void slurs() {
        for (int string = 1; string <= tuning.strings(); string++) {
            for (int index = 0; index < SLURRED_SEMITONES.length; index++) {
                boolean last = index == SLURRED_SEMITONES.length - 1;
                Exercise.Bow bow = index == 0 ? nextBow() : Exercise.Bow.SLUR;
                add(string, SLURRED_SEMITONES[index], 1, last ? BOWED : 1, "mf", bow);
            }
        }
        end("Slurs", "Open string and three fingers in one bow, one beat each.");
    }

    private void slides() {
        for (int string = 1; string <= tuning.strings(); string++) {
            add(string, SLIDE_FROM, 2, 2, "mf", nextBow());
            add(string, SLIDE_TO, 2, 2, "mf", Exercise.Bow.SLIDE);
            add(string, SLIDE_FROM, 2, 2 * BOWED, "mf", Exercise.Bow.SLIDE);
        }
        end(
                "Slides",
                "One finger, one bow: two beats on the lower note, slide up a fourth, two beats, slide back, two beats."
                        + " Each slide takes the half beat before its arrival.");
    }

    private void crossings() {
        for (int string = 1; string < tuning.strings(); string++) {
            for (int stroke = 0; stroke < 8; stroke++) {
                bow(string + stroke % 2, 0, 0.5, "mf");
            }
        }
        end("Crossings", "Two neighbouring open strings in turn, eight strokes a pair, from the highest pair down.");
    }

    private void doubleStops() {
        for (int string = 1; string < tuning.strings(); string++) {
            Exercise.Bow bow = nextBow();
            add(string, 0, 0, 4 * BOWED, "mf", bow);
            add(string + 1, 0, 4, 4 * BOWED, "mf", bow);
        }
        end("Double stops", "Two neighbouring open strings at once, four beats a pair, both as loud.");
    }

    private void bow(int string, int semitones, double beats, String loudness) {
        add(string, semitones, beats, beats * BOWED, loudness, nextBow());
    }

    private Exercise.Bow nextBow() {
        Exercise.Bow bow = down ? Exercise.Bow.DOWN : Exercise.Bow.UP;
        down = !down;
        return bow;
    }

    private void add(int string, int semitones, double step, double beats, String loudness, Exercise.Bow bow) {
        Note note = new Note(tuning.open(string).midi() + semitones);
        strokes.add(new Exercise.Scripted(string, note, beat, beats, loudness, bow));
        beat += step;
    }

    private void end(String title, String instruction) {
        if (!strokes.isEmpty()) {
            passages.add(new Exercise.Passage(title, instruction, start, beat - start, strokes));
            beat += REST_BEATS;
        }
        start = beat;
        strokes = new ArrayList<>();
        down = true;
    }
}
