package rosinbook.take;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import rosinbook.pitch.Note;

/**
 * One voice on a grid: chords one after another, each lasting at most until the next. A note that still sounds when the next
 * starts is cut short, since one voice cannot hold both.
 */
final class ScoreLine {
    /**
     * A note of a chord.
     *
     * @param note its pitch
     * @param string 1 = highest
     * @param slideOff whether a slide starts here
     * @param slideOn whether a slide ends here
     */
    record Head(Note note, int string, boolean slideOff, boolean slideOn) {}

    /**
     * Notes that start together.
     *
     * @param start in grid steps from the start
     * @param steps how long, 1 or more
     * @param heads lowest pitch first
     */
    record Chord(int start, int steps, List<Head> heads) {}

    private ScoreLine() {}

    /**
     * Puts notes on the grid.
     *
     * @param notes in order of time
     * @param arrivals ids of notes a slide arrives at
     * @param originSeconds where the grid starts
     * @param stepSeconds length of a grid step
     */
    static List<Chord> of(List<CleanNote> notes, Set<Integer> arrivals, double originSeconds, double stepSeconds) {
        Map<Integer, List<CleanNote>> starts = new TreeMap<>();
        for (CleanNote clean : notes) {
            int start = (int) Math.rint((clean.note().onSeconds() - originSeconds) / stepSeconds);
            starts.computeIfAbsent(start, none -> new ArrayList<>()).add(clean);
        }
        List<Integer> places = new ArrayList<>(starts.keySet());
        List<Chord> chords = new ArrayList<>();
        for (int index = 0; index < places.size(); index++) {
            int start = places.get(index);
            int end = start + 1;
            Map<Integer, Head> heads = new TreeMap<>();
            for (CleanNote clean : starts.get(start)) {
                TakeNote note = clean.note();
                end = Math.max(end, (int) Math.rint((note.offSeconds() - originSeconds) / stepSeconds));
                heads.putIfAbsent(
                        note.note().midi(),
                        new Head(note.note(), note.string(), clean.glide().isPresent(), arrivals.contains(note.id())));
            }
            if (index + 1 < places.size()) {
                end = Math.min(end, places.get(index + 1));
            }
            chords.add(new Chord(start, end - start, List.copyOf(heads.values())));
        }
        return chords;
    }
}
