package rosinbook.take;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import rosinbook.pitch.Note;
import rosinbook.take.smf.Division;
import rosinbook.take.smf.TempoMap;

/**
 * Scripted strokes for an instrument's strings: what was meant to be played is known, so a take of it can be scored.
 *
 * @param tuning the instrument's strings
 * @param tempoBpm beats a minute, 30 to 180
 * @param countInBeats beats counted before the first stroke
 * @param passages in order
 */
public record Exercise(Tuning tuning, double tempoBpm, int countInBeats, List<Passage> passages) {
    /**
     * Strokes of one sort.
     *
     * @param title what it tries
     * @param instruction how to play it, in a sentence or two
     * @param firstBeat where it starts, counted from the first beat of the count-in, 0 first
     * @param beats how long it lasts, without the rest after it
     * @param strokes in order of time
     */
    public record Passage(String title, String instruction, double firstBeat, double beats, List<Scripted> strokes) {
        /** Copies the list. */
        public Passage {
            Objects.requireNonNull(title, "title");
            Objects.requireNonNull(instruction, "instruction");
            strokes = List.copyOf(strokes);
        }
    }

    /** What the bow does at the start of a note. */
    public enum Bow {
        /** A new stroke towards the tip. */
        @JsonProperty("down")
        DOWN,
        /** A new stroke towards the frog. */
        @JsonProperty("up")
        UP,
        /** The stroke goes on. */
        @JsonProperty("slur")
        SLUR,
        /** The stroke goes on, and the finger slides from the note before. */
        @JsonProperty("slide")
        SLIDE
    }

    /**
     * One note to be played.
     *
     * @param string 1 = highest
     * @param atBeat where it starts, counted from the first beat of the count-in
     * @param beats how long it lasts
     * @param loudness how it is marked: pp, mp, mf or ff
     */
    public record Scripted(int string, Note note, double atBeat, double beats, String loudness, Bow bow) {}

    private static final double SLOWEST_BPM = 30;
    private static final double FASTEST_BPM = 180;
    private static final int TICKS_PER_QUARTER = 480;

    /** @throws IllegalArgumentException if the tempo is out of range */
    public Exercise {
        Objects.requireNonNull(tuning, "tuning");
        if (!(tempoBpm >= SLOWEST_BPM && tempoBpm <= FASTEST_BPM)) {
            throw new IllegalArgumentException("tempo is " + tempoBpm + "; give 30 to 180 beats a minute");
        }
        passages = List.copyOf(passages);
    }

    /**
     * The exercise for these strings.
     *
     * @param tempoBpm beats a minute, 30 to 180
     * @throws IllegalArgumentException if the tempo is out of range, or a string lies too high for it
     */
    public static Exercise of(Tuning tuning, double tempoBpm) {
        return new ExerciseWriter(tuning).write(tempoBpm);
    }

    /** Every note, in order of time. */
    public List<Scripted> strokes() {
        List<Scripted> strokes = new ArrayList<>();
        passages.forEach(passage -> strokes.addAll(passage.strokes()));
        return strokes;
    }

    /** From the first beat of the count-in to the end of the last note, in beats. */
    public double beats() {
        return strokes().stream()
                .mapToDouble(stroke -> stroke.atBeat() + stroke.beats())
                .max()
                .orElse(countInBeats);
    }

    /** The script as notes, the count-in starting at 0 s. A slide counts as its departure and its arrival. */
    public Take truth() {
        return truth(0);
    }

    /**
     * The script as notes, where it lies best along a take: the player may have started the recording at any moment.
     *
     * @param take of the same strings; without a note in common the script starts with the take
     * @see Alignment
     */
    public Take truthAlong(Take take) {
        return truth(Alignment.shiftSeconds(truth(), take));
    }

    private Take truth(double shiftSeconds) {
        int micros = (int) Math.round(60e6 / tempoBpm);
        TempoMap map = TempoMap.of(new Division.Metrical(TICKS_PER_QUARTER), List.of(new TempoMap.Change(0, micros)));
        List<TakeNote> notes = new ArrayList<>();
        for (Scripted stroke : strokes()) {
            double on = Math.max(0, stroke.atBeat() * 60 / tempoBpm + shiftSeconds);
            double off = Math.max(on, (stroke.atBeat() + stroke.beats()) * 60 / tempoBpm + shiftSeconds);
            notes.add(new TakeNote(
                    0,
                    stroke.string(),
                    stroke.string(),
                    stroke.note(),
                    0,
                    64,
                    map.tick(on),
                    map.tick(off),
                    on,
                    off,
                    false));
        }
        return new Take(Notes.inOrder(notes), tuning, StringLayout.fromChannel(1), map, List.of(), List.of());
    }
}
