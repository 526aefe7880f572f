package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;

/**
 * What a reading says.
 *
 * @param step id of the step
 * @param judgement of the reading
 * @param sentence in words
 * @param suspects single faults that would give this reading, those that also explain the other readings first; at most
 *     six; empty for a good reading
 */
public record MeterVerdict(String step, Judgement judgement, String sentence, List<String> suspects) {
    /** Copies the list. */
    public MeterVerdict {
        suspects = List.copyOf(suspects);
    }

    /** Whether a reading is as it should be. */
    public enum Judgement {
        /** Inside the allowed range. */
        @JsonProperty("good")
        GOOD,
        /** Outside it. */
        @JsonProperty("wrong")
        WRONG,
        /** Ohms where volts were asked for, or a step this plan does not have. */
        @JsonProperty("misplaced")
        MISPLACED
    }
}
