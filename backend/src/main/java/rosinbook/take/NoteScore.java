package rosinbook.take;

import java.util.Arrays;

/**
 * How well notes agree with the truth: precision, recall, F1.
 *
 * <p>A note is right when its start lies within 50 ms of a true note's and its pitch within 50 cents; with ends, also its end
 * within the greater of 50 ms and a fifth of the true note's length. Each note is matched at most once, so that the most match
 * (maximum bipartite matching, Hopcroft and Karp 1973). Source: mir_eval's note transcription evaluation (Raffel et al., ISMIR
 * 2014), after MIREX; distances in time are rounded to 0.1 ms, as there.
 *
 * @param precision share of the notes that are right, 0 to 1; 0 without notes
 * @param recall share of the true notes that were found, 0 to 1; 0 without true notes
 * @param f1 the harmonic mean of both, 0 to 1
 */
public record NoteScore(double precision, double recall, double f1) {
    private static final double ONSET_SECONDS = 0.05;
    private static final double PITCH_CENTS = 50;
    private static final double OFFSET_SHARE = 0.2;
    private static final double OFFSET_SECONDS = 0.05;

    /** The score of so many matches. */
    static NoteScore of(int matches, int truth, int notes) {
        if (truth == 0 || notes == 0) {
            return new NoteScore(0, 0, 0);
        }
        double precision = matches / (double) notes;
        double recall = matches / (double) truth;
        return new NoteScore(precision, recall, matches == 0 ? 0 : 2 * precision * recall / (precision + recall));
    }

    /**
     * How many notes can be matched.
     *
     * @param truth in any order
     * @param notes in any order
     * @param withEnds whether ends must agree as well
     */
    static int matches(ScoredNote[] truth, ScoredNote[] notes, boolean withEnds) {
        ScoredNote[] sorted = notes.clone();
        Arrays.sort(sorted, (one, other) -> Double.compare(one.onSeconds(), other.onSeconds()));
        int[][] edges = new int[truth.length][];
        for (int index = 0; index < truth.length; index++) {
            edges[index] = edges(truth[index], sorted, withEnds);
        }
        return new Matching(edges, sorted.length).size();
    }

    private static int[] edges(ScoredNote truth, ScoredNote[] sorted, boolean withEnds) {
        int from = firstFrom(sorted, truth.onSeconds() - ONSET_SECONDS - 1e-4);
        int[] edges = new int[4];
        int size = 0;
        for (int index = from; index < sorted.length; index++) {
            if (sorted[index].onSeconds() > truth.onSeconds() + ONSET_SECONDS + 1e-4) {
                break;
            }
            if (agree(truth, sorted[index], withEnds)) {
                edges = size == edges.length ? Arrays.copyOf(edges, size * 2) : edges;
                edges[size++] = index;
            }
        }
        return Arrays.copyOf(edges, size);
    }

    private static int firstFrom(ScoredNote[] sorted, double onSeconds) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle].onSeconds() < onSeconds) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static boolean agree(ScoredNote truth, ScoredNote note, boolean withEnds) {
        if (rounded(truth.onSeconds() - note.onSeconds()) > ONSET_SECONDS
                || 100 * Math.abs(truth.pitch() - note.pitch()) > PITCH_CENTS) {
            return false;
        }
        double tolerance = Math.max(OFFSET_SHARE * (truth.offSeconds() - truth.onSeconds()), OFFSET_SECONDS);
        return !withEnds || rounded(truth.offSeconds() - note.offSeconds()) <= tolerance;
    }

    private static double rounded(double seconds) {
        return Math.rint(Math.abs(seconds) * 1e4) / 1e4;
    }
}
