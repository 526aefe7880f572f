package rosinbook.level;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import rosinbook.pitch.Note;

/**
 * One stroke in figures, taken from its steady part. Levels in dBFS; see {@link LevelUnit#DBFS}.
 *
 * @param string 1 = highest
 * @param note the string's open note; null if the tuning is not known
 * @param fromSeconds where it starts
 * @param toSeconds where it ends
 * @param loudness soft, medium or loud
 * @param rmsDbfs on the string's own input
 * @param peakDbfs on the string's own input, attack included
 * @param crestDb peak less rms
 * @param signalToNoiseDb rms less that input's noise
 * @param hertz its pitch; null if none is clear
 * @param rmsDbfsByInput input 1, 2 and so on, noise included
 */
public record MeasuredSegment(
        int string,
        Note note,
        @JsonProperty("from") double fromSeconds,
        @JsonProperty("to") double toSeconds,
        Loudness loudness,
        double rmsDbfs,
        double peakDbfs,
        double crestDb,
        double signalToNoiseDb,
        Double hertz,
        List<Double> rmsDbfsByInput) {
    /** Copies the list. */
    public MeasuredSegment {
        rmsDbfsByInput = List.copyOf(rmsDbfsByInput);
    }

    /** The bare stretch, to be corrected and measured again. */
    public Segment toSegment() {
        return new Segment(string, fromSeconds, toSeconds, loudness);
    }
}
